import type { SessionEvent } from '../session/events.ts';
import type { EventGroup } from './event-groups.ts';
import type { Damage } from './journal-file.ts';
import { compareRanked, type Ranked, ranked } from './latest.ts';
import { fileOf } from './line-codec.ts';
import type { JournalEvent, LooseEvent } from './records.ts';

/** The files of one session: that of the device which opened it, then those that went on with it. */
export interface SessionGroups {
  readonly session: string;
  readonly groups: readonly EventGroup[];
}

type Opening = Extract<SessionEvent, { type: 'session-opened' }>;
type TakingOver = Extract<LooseEvent, { type: 'session-taken-over' }>;

/** Events of files that hold no session, in order over all files. */
export type Loose = Ranked<Exclude<JournalEvent, Opening | TakingOver>>;

/** Tells sessions and the files of single days apart, and puts the files of each session in order. */
export function splitGroups(groups: readonly EventGroup[]): {
  readonly sessions: readonly SessionGroups[];
  readonly loose: readonly Loose[];
  readonly damages: readonly Damage[];
} {
  const openings = new Map<string, EventGroup>();
  const takings: { readonly event: TakingOver; readonly group: EventGroup }[] = [];
  const loose: Loose[] = [];
  const damages: Damage[] = [];
  for (const group of groups) {
    const [first] = group.events;
    if (first?.type === 'session-opened') {
      if (!openings.has(first.session)) openings.set(first.session, group);
    } else if (first?.type === 'session-taken-over') {
      takings.push({ event: first, group });
    } else if (group.events.every(isLoose)) {
      loose.push(...ranked(group.events.filter(isLoose)));
    } else {
      damages.push(withoutOpening(group));
    }
  }
  const sessions = [...openings].map(([session, opened]) => ({
    session,
    groups: chain(
      opened,
      takings.filter(({ event }) => event.session === session),
    ),
  }));
  return { sessions, loose: loose.sort(compareRanked), damages };
}

/** Each taking over comes behind the file that it had read last; of two, the earlier one first. */
function chain(
  opened: EventGroup,
  takings: readonly { readonly event: TakingOver; readonly group: EventGroup }[],
): EventGroup[] {
  const inOrder = takings.toSorted((a, b) =>
    compareRanked(
      { event: a.event, rank: a.event.at.wall },
      { event: b.event, rank: b.event.at.wall },
    ),
  );
  const following = (group: EventGroup): EventGroup[] => [
    group,
    ...inOrder
      .filter(({ event }) => fileOf(event.after) === group.id)
      .flatMap((taking) => (taking.group === group ? [] : following(taking.group))),
  ];
  const chained = following(opened);
  // What follows a file that is not here yet still belongs to the session.
  return [
    ...chained,
    ...inOrder.map(({ group }) => group).filter((group) => !chained.includes(group)),
  ];
}

const LOOSE: ReadonlySet<JournalEvent['type']> = new Set<JournalEvent['type']>([
  'weighed',
  'decided',
  'gear-set',
  'deleted',
  'set-amended',
  'sets-confirmed',
  'undone',
]);

const isLoose = (event: JournalEvent): event is Loose['event'] => LOOSE.has(event.type);

const withoutOpening = ({ name: file }: EventGroup): Damage => ({
  file,
  kind: 'no-opening',
  problem: {
    what: `${file} holds sets, but the line that opened their session is missing or damaged.`,
    fix: 'Bring the file back from a backup if you have one.',
  },
});
