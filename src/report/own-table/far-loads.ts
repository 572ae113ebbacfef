import { rollups } from 'd3-array';
import { oneRepMax } from '../../training/strength.ts';
import type { KnownSet } from './own-sessions.ts';
import type { OwnSet } from './read-own-table.ts';

/**
 * A day of a lift that tells of more than so many times the strength of any other is more likely a
 * lost decimal point, or pounds taken for kilograms (2.2), than true. Ours.
 */
const FAR = 2;

/**
 * Sets of a table that are far heavier than all other days of their lift, in the table or known
 * before; none of a lift with a single day, of body weight lifts and of holds.
 */
export function farLoads(sets: readonly OwnSet[], known: readonly KnownSet[]): readonly OwnSet[] {
  const own = sets.map((set) => ({ ...set, date: set.date.toString(), lift: set.lift.key }));
  const bests = rollups(
    [...known, ...own],
    (of) => Math.max(...of.map(strengthOf)),
    ({ lift }) => lift,
    ({ date }) => date,
  );
  const byLift = new Map(
    bests.map(([lift, days]) => [lift, days.toSorted(([, a], [, b]) => b - a).slice(0, 2)]),
  );
  return sets.filter((set) => {
    const { lift, date } = set;
    if (lift.loading === 'bodyweight' || lift.counts === 'seconds') return false;
    const others = byLift.get(lift.key)?.find(([day]) => day !== date.toString());
    return others !== undefined && others[1] > 0 && strengthOf(set) > FAR * others[1];
  });
}

/** Reserves are often not told: of none, so that a true set is rather passed than doubted. */
const strengthOf = ({ load, count }: Pick<KnownSet, 'load' | 'count'>): number =>
  oneRepMax(load, count);
