import type { Temporal } from 'temporal-polyfill';
import type { Mass } from '../training/mass.ts';
import { median } from '../training/median.ts';
import { oneRepMax } from '../training/strength.ts';
import { systemLoad } from '../training/system-load.ts';
import { type Bout, boutsSince, reserveOfSet } from './bout.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';

/** So many of the latest sessions are looked at, however old, to tell whether there are enough. */
const ENOUGH_BOUTS = 12;

/** A track that lost strength in both of its last two sessions. */
export interface Slip {
  /** Median of the three best sessions of the last 56 days, in micrograms (or seconds). */
  readonly reference: number;
  /** The last two sessions, the latest last. */
  readonly latest: readonly [number, number];
  /** How far the better of the two is under the reference, as a share. */
  readonly by: number;
}

/** Sessions that tell about strength: not the first ones, not after a layoff, none with pain. */
export function countedBouts(bouts: readonly Bout[]): readonly Bout[] {
  return bouts.filter(({ result, pains }) => {
    const { move } = result.exercise;
    return move !== 'start' && move !== 'return' && pains === 0 && !result.lighter;
  });
}

/**
 * Strength shown in a session: the best estimate from a set with at most 3 in reserve, on the
 * system load of that day, in micrograms; for timed holds the longest, in seconds. Null where no
 * set tells.
 */
export function strengthOf(bout: Bout, bodyMassOn: Past['bodyMassOn']): number | null {
  const { exercise, date, sets } = bout.result;
  const work = exercise.style === 'cluster' ? sets.slice(0, 1) : sets;
  if (exercise.counts === 'seconds') return Math.max(...work.map(({ count }) => count));
  const best = work
    .filter((set) => set.count > 0 && reserveOfSet(set, bout) <= LIMITS.reserveForStrength)
    .map((set) => {
      const lifted = liftedOn(bout, set.load, bodyMassOn(date));
      return lifted === null || lifted <= 0
        ? null
        : oneRepMax(lifted, set.count + reserveOfSet(set, bout));
    })
    .filter((estimate) => estimate !== null);
  return best.length === 0 ? null : Math.max(...best);
}

function liftedOn({ result }: Bout, load: Mass, body: Mass | null): Mass | null {
  const { loading, bodyShare } = result.exercise;
  return loading === 'bodyweight' ? systemLoad(load, body, bodyShare ?? 1) : load;
}

/**
 * Is the track slipping: both of the last two counted sessions more than 5 % under the median of
 * the three best of the last 56 days? (Ours.) Null where it is not, or with fewer than five
 * counted sessions, or when the last session matches a reference session in load and first reps.
 */
export function slipOf(
  bouts: readonly Bout[],
  bodyMassOn: Past['bodyMassOn'],
  today: Temporal.PlainDate,
): Slip | null {
  const counted = countedBouts(bouts);
  const recent = new Set(boutsSince(counted, today.subtract({ days: LIMITS.slipDays })));
  const shown = counted
    .slice(-Math.max(recent.size, ENOUGH_BOUTS))
    .map((bout) => ({ bout, strength: strengthOf(bout, bodyMassOn) }))
    .filter((each): each is { bout: Bout; strength: number } => each.strength !== null);
  const [before, last] = shown.slice(-2);
  if (shown.length < LIMITS.slipSessions || !before || !last) return null;
  const references = shown
    .filter(({ bout }) => recent.has(bout))
    .sort((a, b) => b.strength - a.strength)
    .slice(0, 3);
  const reference = median(references.map(({ strength }) => strength));
  if (reference === null) return null;
  const allowed = last.bout.result.exercise.counts === 'seconds' ? LIMITS.slipTimed : LIMITS.slip;
  const by = 1 - Math.max(before.strength, last.strength) / reference;
  const earlier = references.filter((each) => each !== before && each !== last);
  if (by <= allowed || earlier.some(({ bout }) => matches(last.bout, bout))) return null;
  return { reference, latest: [before.strength, last.strength], by };
}

function matches(last: Bout, reference: Bout): boolean {
  const [reps, wanted] = [last.sets[0]?.count ?? 0, reference.sets[0]?.count ?? 0];
  return last.load >= reference.load && reps >= wanted;
}
