import type { Result, SessionDone } from '../progression/past.ts';
import { fold } from '../session/apply.ts';
import { resultsOf } from '../session/results.ts';
import { sessionDoneOf } from '../session/session-done.ts';
import type { SessionState } from '../session/state.ts';
import { bodyMassOn } from './body-mass-on.ts';
import { eventGroups } from './event-groups.ts';
import type { History, OpenSession } from './history.ts';
import type { JournalFile } from './journal-file.ts';
import type { Ranked } from './latest.ts';
import { fileOf } from './line-codec.ts';
import { deletedIds, looseFacts } from './loose-facts.ts';
import type { JournalEvent } from './records.ts';
import { type CorrectionEvent, sessionEvents } from './session-events.ts';
import { type SessionGroups, splitGroups } from './split-groups.ts';

interface FoldedSession {
  readonly state: SessionState;
  readonly foreign: boolean;
  /** The file that was written to last. */
  readonly own: boolean;
  readonly file: string;
  /** Name of the device that wrote to it last. */
  readonly device: string;
}

/**
 * The history that journal files hold, in whatever order they come: sessions by start, device and
 * id, each event once, corrections and deletions applied, nothing judged.
 */
export function foldHistory(files: readonly JournalFile[]): History {
  const { groups, namedByNewer, damages } = eventGroups(files);
  const { sessions, loose, damages: lost } = splitGroups(groups);
  const facts = looseFacts(loose);
  const deleted = deletedIds(facts.deletions);
  const corrections = correctionsBySession(sessions, facts.corrections);
  const folded = sessions
    .filter(({ session }) => !deleted.has(session))
    .map((each) => {
      const found = corrections.get(each.session) ?? [];
      return foldSession(each, found, deleted, namedByNewer);
    })
    .filter((each) => each !== null)
    .sort(compareSessions);
  const closed = folded.filter(({ state }) => isClosed(state));
  const { weighIns, decisions, gear, deletions } = facts;
  return {
    results: closed.flatMap(({ state }): Result[] => resultsOf(state)),
    sessions: closed.map(
      ({ state, foreign }): SessionDone => ({ ...sessionDoneOf(state), foreign }),
    ),
    closed: closed.map(({ state }) => state),
    open: folded.filter(({ state }) => state.stage.kind !== 'closed').map(openSession),
    decisions,
    weighIns,
    gear,
    bodyMassOn: bodyMassOn(weighIns),
    deletions,
    unreadable: [...damages, ...lost],
    events: groups.flatMap(({ events }) => events),
  };
}

function foldSession(
  { groups }: SessionGroups,
  corrections: readonly Ranked<CorrectionEvent>[],
  deleted: ReadonlySet<string>,
  namedByNewer: ReadonlySet<string>,
): FoldedSession | null {
  const events = sessionEvents(groups, corrections, deleted);
  const state = fold(events);
  if (!state) return null;
  const named = namedByNewer.has(state.session) || events.some(({ id }) => namedByNewer.has(id));
  return {
    state,
    foreign: named || groups.some(({ foreign }) => foreign),
    own: groups.at(-1)?.own ?? false,
    file: groups.at(-1)?.name ?? '',
    device: deviceOf(groups.at(-1)?.events[0]) ?? state.device,
  };
}

const deviceOf = (first: JournalEvent | undefined): string | undefined =>
  first?.type === 'session-taken-over' ? first.device : undefined;

function correctionsBySession(
  sessions: readonly SessionGroups[],
  corrections: readonly Ranked[],
): ReadonlyMap<string, Ranked<CorrectionEvent>[]> {
  const sessionOf = new Map(
    sessions.flatMap(({ session, groups }) => groups.map(({ id }) => [id, session] as const)),
  );
  const found = new Map<string, Ranked<CorrectionEvent>[]>();
  for (const each of corrections as readonly Ranked<CorrectionEvent>[]) {
    const [of] = [each.event.of].flat();
    const session = of === undefined ? undefined : sessionOf.get(fileOf(of));
    if (session === undefined) continue;
    const others = found.get(session);
    if (others) others.push(each);
    else found.set(session, [each]);
  }
  return found;
}

function compareSessions({ state: a }: FoldedSession, { state: b }: FoldedSession): number {
  const byStart = a.openedAt.wall - b.openedAt.wall;
  if (byStart !== 0) return byStart;
  const [textA, textB] = [`${a.device} ${a.session}`, `${b.device} ${b.session}`];
  return textA < textB ? -1 : textA > textB ? 1 : 0;
}

const isClosed = ({ stage }: SessionState): boolean =>
  stage.kind === 'closed' && stage.how !== 'discarded';

const openSession = (folded: FoldedSession): OpenSession => ({
  session: folded.state.session,
  ...folded,
});
