import { Temporal } from 'temporal-polyfill';
import type { Decision } from '../progression/past.ts';
import { localDate } from '../session/local-date.ts';
import type { Gear } from '../training/gear.ts';
import type { Deletion, WeighIn } from './history.ts';
import type { Loose } from './split-groups.ts';

/** What the events outside sessions come to. */
export interface LooseFacts {
  readonly weighIns: readonly WeighIn[];
  readonly decisions: readonly Decision[];
  readonly gear: Gear | null;
  /** Deletions in force: the id of each, and what it takes away. */
  readonly deletions: readonly Deletion[];
  /** Corrections of sets, oldest first. */
  readonly corrections: readonly Loose[];
}

/** @param loose events in order over all files */
export function looseFacts(loose: readonly Loose[]): LooseFacts {
  const gone = takenBack(loose);
  const standing = loose.filter(({ event }) => !gone.has(event.id));
  const deletions = standing.flatMap(({ event }) =>
    event.type === 'deleted' ? [{ id: event.id, of: event.of }] : [],
  );
  const deleted = deletedIds(deletions);
  const weighIns: WeighIn[] = [];
  const decisions: Decision[] = [];
  const corrections: Loose[] = [];
  let gear: Gear | null = null;
  for (const each of standing) {
    const { event } = each;
    if (deleted.has(event.id)) continue;
    if (event.type === 'weighed') weighIns.push(weighIn(event));
    else if (event.type === 'decided') decisions.push(decision(event));
    else if (event.type === 'gear-set') gear = event.gear;
    else if (event.type !== 'deleted') corrections.push(each);
  }
  // A stable sort: of one day, in order of being written.
  weighIns.sort((a, b) => Temporal.PlainDate.compare(a.date, b.date));
  return { weighIns, decisions, gear, deletions, corrections };
}

export const deletedIds = (deletions: readonly Deletion[]): ReadonlySet<string> =>
  new Set(deletions.map(({ of }) => of));

/** Ids that an undo in force names. The latest decides first. */
function takenBack(loose: readonly Loose[]): ReadonlySet<string> {
  const gone = new Set<string>();
  for (const { event } of loose.toReversed()) {
    if (event.type === 'undone' && !gone.has(event.id)) gone.add(event.of);
  }
  return gone;
}

type Event<Type extends Loose['event']['type']> = Extract<Loose['event'], { type: Type }>;

const weighIn = ({ id, mass, on }: Event<'weighed'>): WeighIn => ({
  id,
  mass,
  date: Temporal.PlainDate.from(on),
});

const decision = ({ rule, answer, subject, at, zone }: Event<'decided'>): Decision => ({
  rule,
  answer,
  subject,
  at: at.wall,
  date: localDate(at.wall, zone),
});
