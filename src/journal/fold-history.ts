import type { SessionState } from '../session/state.ts';
import { bodyMassOn } from './body-mass-on.ts';
import { eventGroups } from './event-groups.ts';
import { bySessionOrder, type Folded, foldGroups } from './fold-groups.ts';
import type { History } from './history.ts';
import type { JournalFile } from './journal-file.ts';
import type { JournalEvent } from './records.ts';
import {
  LATEST_SESSIONS,
  type SettledPast,
  type SettledSession,
  settle,
  touches,
} from './settled-past.ts';

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
  const { weighIns, decisions, gear, deletions } = facts;
  return {
    results: sessions.flatMap(({ results }) => results),
    sessions: sessions.map(({ done }) => done),
    latest: sessions
      .slice(-LATEST_SESSIONS)
      .flatMap(({ done, planned }) => (planned ? [{ done, planned }] : [])),
    open: open.map((folded) => ({ session: folded.state.session, ...folded })),
    decisions,
    weighIns,
    gear,
    bodyMassOn: bodyMassOn(weighIns),
    deletions,
    unreadable: damages,
    closed: () => whole().closed,
    events: () => whole().events,
  };
}
