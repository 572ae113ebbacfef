import type { Result, SessionDone } from '../progression/past.ts';
import type { Prescription } from '../progression/prescription.ts';
import { resultsOf } from '../session/results.ts';
import { sessionDoneOf } from '../session/session-done.ts';
import { type EventGroup, eventGroups } from './event-groups.ts';
import { type FoldedSession, foldGroups, type SessionOrder } from './fold-groups.ts';
import type { Damage, JournalFile } from './journal-file.ts';
import { fileOf } from './line-codec.ts';
import type { JournalEvent } from './records.ts';

/** So many of the latest sessions tell the lifter's pace, and keep what was planned. */
export const LATEST_SESSIONS = 20;

/** A closed session without its events. */
export interface SettledSession extends SessionOrder {
  readonly done: SessionDone;
  readonly results: readonly Result[];
  /** Null where {@link LATEST_SESSIONS} are later. */
  readonly planned: Prescription | null;
}

/** What files came to that no longer grow: all of it that a history needs, but for old events. */
export interface SettledPast {
  readonly sessions: readonly SettledSession[];
  /** Every group of events that is in none of the sessions. */
  readonly groups: readonly EventGroup[];
  readonly namedByNewer: readonly string[];
  readonly damages: readonly Damage[];
  /** Ids of its files and sessions. */
  readonly ids: readonly string[];
}

export function settledPast(files: readonly JournalFile[]): SettledPast {
  const grouped = eventGroups(files);
  const { closed } = foldGroups(grouped);
  const settled = new Set(closed.flatMap(({ ids }) => ids));
  const ids = [...grouped.groups.map(({ id }) => id), ...closed.map(({ state }) => state.session)];
  return {
    sessions: settle(closed).map((each, at) =>
      at < closed.length - LATEST_SESSIONS ? { ...each, planned: null } : each,
    ),
    groups: grouped.groups.filter(({ id }) => !settled.has(id)),
    namedByNewer: [...grouped.namedByNewer],
    damages: grouped.damages,
    ids: [...new Set(ids)],
  };
}

export const settle = (closed: readonly FoldedSession[]): readonly SettledSession[] =>
  closed.map(({ state, foreign }) => ({
    start: state.openedAt.wall,
    device: state.device,
    session: state.session,
    done: { ...sessionDoneOf(state), foreign },
    results: resultsOf(state),
    planned: state.prescription,
  }));

/** Do newer events speak of anything in the settled past? Then it has to be folded anew. */
export function touches(
  { groups, namedByNewer }: Pick<ReturnType<typeof eventGroups>, 'groups' | 'namedByNewer'>,
  { ids }: SettledPast,
): boolean {
  const settled = new Set(ids);
  const isSettled = (name: string): boolean => settled.has(name) || settled.has(fileOf(name));
  return (
    [...namedByNewer].some(isSettled) ||
    groups.some(
      ({ id, events }) => settled.has(id) || events.some((each) => names(each).some(isSettled)),
    )
  );
}

/** Ids of files, events and sessions that an event speaks of. */
function names(event: JournalEvent): readonly string[] {
  const { of, session, after } = event as Partial<Record<'of' | 'session' | 'after', unknown>>;
  return [of, session, after].flat().filter((name) => typeof name === 'string');
}
