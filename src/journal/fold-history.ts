import type { Result, SessionDone } from '../progression/past.ts';
import type { Prescription } from '../progression/prescription.ts';
import { resultsOf, sessionDoneOf } from '../session/results.ts';
import type { SessionState } from '../session/state.ts';
import { type EventGroup, eventGroups } from './event-groups.ts';
import {
  bySessionOrder,
  type Folded,
  type FoldedSession,
  foldGroups,
  type SessionOrder,
} from './fold-groups.ts';
import { bodyMassOn, type History } from './history.ts';
import { type Damage, fileOf, type JournalFile } from './lines.ts';
import type { JournalEvent } from './records.ts';

/** What only the events of all files tell. */
interface Whole {
  readonly closed: readonly SessionState[];
  readonly events: readonly JournalEvent[];
}

/**
 * The history that journal files hold, in whatever order they come: sessions by start, device and
 * id, each event once, corrections and deletions applied, nothing judged.
 */
export function foldHistory(files: readonly JournalFile[]): History {
  const grouped = eventGroups(files);
  const folded = foldGroups(grouped);
  const closed = folded.closed.map(({ state }) => state);
  const events = grouped.groups.flatMap((group) => group.events);
  return historyOf(folded, settle(folded.closed), () => ({ closed, events }));
}

/**
 * The same history from what old files came to and the files since. Null where the newer ones speak
 * of the older.
 * @param whole reads all files, for what only they tell
 */
export function historySince(
  past: SettledPast,
  files: readonly JournalFile[],
  whole: () => Whole,
): History | null {
  const grouped = eventGroups(files);
  if (touches(grouped, past)) return null;
  const folded = foldGroups({
    groups: [...past.groups, ...grouped.groups],
    namedByNewer: new Set([...past.namedByNewer, ...grouped.namedByNewer]),
    damages: [...past.damages, ...grouped.damages],
  });
  const sessions = [...past.sessions, ...settle(folded.closed)].sort(bySessionOrder);
  return historyOf(folded, sessions, whole);
}

function historyOf(
  { open, facts, damages }: Folded,
  sessions: readonly SettledSession[],
  whole: () => Whole,
): History {
  const { weighIns, waists, decisions, kits, gear, deletions } = facts;
  return {
    results: sessions.flatMap(({ results }) => results),
    sessions: sessions.map(({ done }) => done),
    latest: sessions
      .slice(-LATEST_SESSIONS)
      .flatMap(({ done, planned }) => (planned ? [{ done, planned }] : [])),
    open: open.map((folded) => ({ session: folded.state.session, ...folded })),
    decisions,
    weighIns,
    waists,
    kits,
    gear,
    bodyMassOn: bodyMassOn(weighIns),
    deletions,
    unreadable: damages,
    closed: () => whole().closed,
    events: () => whole().events,
  };
}

/** So many of the latest sessions tell the lifter's pace, and keep what was planned. */
const LATEST_SESSIONS = 20;

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

const settle = (closed: readonly FoldedSession[]): readonly SettledSession[] =>
  closed.map(({ state, foreign }) => ({
    start: state.openedAt.wall,
    device: state.device,
    session: state.session,
    done: { ...sessionDoneOf(state), foreign },
    results: resultsOf(state),
    planned: state.prescription,
  }));

/** Do newer events speak of anything in the settled past? Then it has to be folded anew. */
function touches(
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
  // It only remembers what came in together, and changes nothing of it.
  if (event.type === 'imported') return [];
  const { of, session, after } = event as Partial<Record<'of' | 'session' | 'after', unknown>>;
  return [of, session, after].flat().filter((name) => typeof name === 'string');
}
