import type { Temporal } from 'temporal-polyfill';
import type { Past, Result, SetResult } from '../progression/past.ts';
import { reserveOf, tellsStrength } from '../training/effort.ts';
import type { Mass } from '../training/mass.ts';
import { shownOneRepMax, systemLoad } from '../training/strength.ts';

/**
 * e1RM of one set in micrograms, as it may be shown: null for timed holds, mini-sets, more than 5 in
 * reserve or 15 reps to failure, and body weight lifts before the first weigh-in.
 */
export function shownStrength(
  result: Result,
  set: SetResult,
  bodyMassOn: Past['bodyMassOn'],
): number | null {
  const { exercise, sets, date } = result;
  if (exercise.counts === 'seconds') return null;
  if (exercise.style === 'cluster' && set !== sets[0]) return null;
  const { reserve } = reserveOf(set.reserve, exercise.reserve);
  const lifted = liftedOn(result, set.load, date, bodyMassOn);
  if (lifted === null || lifted <= 0 || !tellsStrength(reserve)) return null;
  return shownOneRepMax(lifted, set.count + reserve);
}

/** The best {@link shownStrength} of a session's exercise, or null. */
export function bestShown(result: Result, bodyMassOn: Past['bodyMassOn']): number | null {
  return result.sets.reduce<number | null>((best, set) => {
    const shown = shownStrength(result, set, bodyMassOn);
    return shown !== null && (best === null || shown > best) ? shown : best;
  }, null);
}

function liftedOn(
  { exercise }: Result,
  load: Mass,
  date: Temporal.PlainDate,
  bodyMassOn: Past['bodyMassOn'],
): Mass | null {
  if (exercise.loading !== 'bodyweight') return load;
  return systemLoad(load, bodyMassOn(date), exercise.bodyShare ?? 1);
}
