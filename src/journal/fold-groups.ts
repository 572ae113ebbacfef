import { fold } from '../session/apply.ts';
import type { SessionState } from '../session/state.ts';
import type { eventGroups } from './event-groups.ts';
import type { Damage } from './journal-file.ts';
import type { Ranked } from './latest.ts';
import { fileOf } from './line-codec.ts';
import { deletedIds, type LooseFacts, looseFacts } from './loose-facts.ts';
import type { JournalEvent } from './records.ts';
import { type CorrectionEvent, sessionEvents } from './session-events.ts';
import { type SessionGroups, splitGroups } from './split-groups.ts';

/** A session folded from its events, corrections applied. */
export interface FoldedSession {
  readonly state: SessionState;
  readonly foreign: boolean;
  /** The file that was written to last. */
  readonly own: boolean;
  readonly file: string;
  /** Name of the device that wrote to it last. */
  readonly device: string;
  /** Ids of the files that it was written to. */
  readonly ids: readonly string[];
}

export interface Folded {
  /** Finished or closed as they were, by start, device and id. */
  readonly closed: readonly FoldedSession[];
  /** Neither closed nor discarded, in the same order. */
  readonly open: readonly FoldedSession[];
  readonly facts: LooseFacts;
  readonly damages: readonly Damage[];
}

/** What groups of events come to, in whatever order they come: nothing is judged. */
export function foldGroups({
  groups,
  namedByNewer,
  damages,
}: ReturnType<typeof eventGroups>): Folded {
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
    .sort((a, b) => bySessionOrder(orderOf(a.state), orderOf(b.state)));
  return {
    closed: folded.filter(({ state }) => isClosed(state)),
    open: folded.filter(({ state }) => state.stage.kind !== 'closed'),
    facts,
    damages: [...damages, ...lost],
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
    ids: groups.map(({ id }) => id),
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

/** What decides the order of sessions. */
export interface SessionOrder {
  readonly start: number;
  /** Name of the device that opened it. */
  readonly device: string;
  readonly session: string;
}

export function bySessionOrder(a: SessionOrder, b: SessionOrder): number {
  if (a.start !== b.start) return a.start - b.start;
  const [textA, textB] = [`${a.device} ${a.session}`, `${b.device} ${b.session}`];
  return textA < textB ? -1 : textA > textB ? 1 : 0;
}

const orderOf = ({ openedAt, device, session }: SessionState): SessionOrder => ({
  start: openedAt.wall,
  device,
  session,
});

const isClosed = ({ stage }: SessionState): boolean =>
  stage.kind === 'closed' && stage.how !== 'discarded';
