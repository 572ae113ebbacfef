import type { Past, Result, SessionDone } from '../progression/past.ts';
import type { Prescription } from '../progression/prescription.ts';
import { resultsOf, sessionDoneOf } from '../session/results.ts';
import { once } from '../text/once.ts';
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

/**
 * The history that journal files hold, in whatever order they come: sessions by start, device and
 * id, each event once, corrections and deletions applied, nothing judged.
 */
export function foldHistory(files: readonly JournalFile[]): History {
  const grouped = eventGroups(files);
  const folded = foldGroups(grouped);
  const closed = folded.closed.map(({ state }) => state);
  const events = grouped.groups.flatMap((group) => group.events);
  const sessions = settle(folded.closed);
  const past = { ...pastOf(sessions), closed: () => closed, events: () => events };
  return historyOf(folded, latelyOf(sessions), past);
}

/**
 * The same history from what old files came to and the files since. Null where the newer ones speak
 * of the older.
 * @param whole reads all files, for what only they tell
 */
export function historySince(
  past: SettledPast,
  files: readonly JournalFile[],
  whole: () => History,
): History | null {
  const grouped = eventGroups(files);
  if (touches(grouped, past)) return null;
  const folded = foldGroups({
    groups: [...past.groups, ...grouped.groups],
    namedByNewer: new Set([...past.namedByNewer, ...grouped.namedByNewer]),
    damages: [...past.damages, ...grouped.damages],
  });
  const sessions = [...past.sessions, ...settle(folded.closed)].sort(bySessionOrder);
  const all = once(() => {
    const older = past.older();
    return older ? pastOf([...older, ...sessions].sort(bySessionOrder)) : whole();
  });
  return historyOf(folded, latelyOf(sessions), {
    get results() {
      return all().results;
    },
    get sessions() {
      return all().sessions;
    },
    closed: () => whole().closed(),
    events: () => whole().events(),
  });
}

const pastOf = (sessions: readonly SettledSession[]): Pick<Past, 'results' | 'sessions'> => ({
  results: sessions.flatMap(({ results }) => results),
  sessions: sessions.map(({ done }) => done),
});

/** Of so many days before the latest sessions results say something of today. Ours. */
const LATELY_DAYS = 730;

/**
 * Counted from the first of the latest sessions: a single one of a clock that was far ahead must not
 * push all others out.
 * @param sessions in order
 */
function latelyOf(sessions: readonly SettledSession[]): readonly SettledSession[] {
  const latest = sessions.at(-LATEST_SESSIONS);
  if (!latest) return sessions;
  return sessions.filter(({ start }) => latest.start - start <= LATELY_DAYS * 86_400_000);
}

/** @param past what is worked out when it is asked for; nothing of it is asked for here */
function historyOf(
  { open, facts, damages }: Folded,
  lately: readonly SettledSession[],
  past: Pick<History, 'results' | 'sessions' | 'closed' | 'events'>,
): History {
  const { weighIns, waists, decisions, kits, gear, deletions } = facts;
  const trend = bodyMassOn(weighIns);
  const rest = {
    lately: { ...pastOf(lately), decisions, bodyMassOn: trend },
    latest: lately
      .slice(-LATEST_SESSIONS)
      .flatMap(({ done, planned }) => (planned ? [{ done, planned }] : [])),
    open: open.map((folded) => ({ session: folded.state.session, ...folded })),
    decisions,
    weighIns,
    waists,
    kits,
    gear,
    bodyMassOn: trend,
    deletions,
    unreadable: damages,
  };
  // Not spread: that would ask for all of it.
  return Object.defineProperties(rest, Object.getOwnPropertyDescriptors(past)) as typeof rest &
    typeof past;
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
  /** Those that {@link History.lately} may need. */
  readonly sessions: readonly SettledSession[];
  /** Those before; null where they are not to be had. */
  readonly older: () => readonly SettledSession[] | null;
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
  const sessions = settle(closed).map((each, at) =>
    at < closed.length - LATEST_SESSIONS ? { ...each, planned: null } : each,
  );
  const lately = latelyOf(sessions);
  const older = sessions.slice(0, sessions.length - lately.length);
  return {
    sessions: lately,
    older: () => older,
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
