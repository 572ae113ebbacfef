import type { Gear } from '../training/gear.ts';
import { nextBelow } from '../training/loads.ts';
import { type Mass, micrograms } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { loadFor, middle, type SetEvidence } from './estimate.ts';
import { LIMITS } from './limits.ts';
import type { SetResult } from './past.ts';
import type { PrescribedExercise } from './prescription.ts';
import { type Rack, rackFor, stepAbove } from './rack.ts';
import { because } from './rules/progression-rules.ts';

/** Another load for the sets that are left; one key takes it, nothing forces it. */
export interface LoadOffer {
  readonly load: Mass;
  readonly reason: Reason;
}

/**
 * After a set below the low end: the nearest loadable load not above this one whose estimate gives
 * the middle of the range. In a first session also upwards, when the set was far too light, and
 * with a set more where none is left: the load is found by going up to it. Null where the load is
 * right, no set is left, or it is a cluster.
 */
export function offerAfterSet(
  exercise: PrescribedExercise,
  done: readonly SetResult[],
  gear: Gear,
  bodyMass: Mass | null,
): LoadOffer | null {
  const last = done.at(-1);
  if (!last || exercise.style === 'cluster') return null;
  const isFirst = exercise.move === 'start';
  const most = isFirst && isTooLight(exercise, last) ? LIMITS.setsToFind : exercise.sets.length;
  if (done.length >= most) return null;
  const rack = rackFor(exercise, gear, bodyMass);
  const low = exercise.sets[done.length - 1]?.range[0] ?? exercise.range[0];
  if (last.count < low) return lighterOffer(exercise, last, rack, low);
  return isFirst && isTooLight(exercise, last) ? heavierOffer(exercise, last, rack) : null;
}

function isTooLight({ range, counts }: PrescribedExercise, set: SetResult): boolean {
  if (counts === 'seconds') return set.count > range[1] + 2 * LIMITS.secondsPerRep;
  return (set.reserve ?? 0) >= LIMITS.tooEasyReserve || set.count > range[1] + 2;
}

function lighterOffer(
  exercise: PrescribedExercise,
  set: SetResult,
  rack: Rack,
  low: number,
): LoadOffer | null {
  const wish = wishAfter(exercise, set, rack);
  const load =
    wish === null
      ? nextBelow(rack.loads, set.load)
      : (rack.loads.atOrBelow(wish) ?? rack.loads.lightest);
  if (load === null || load >= set.load) return null;
  const facts = { done: set.count, from: set.load, load, low };
  return { load, reason: because('offer-lighter', told(exercise, facts)) };
}

/** Upwards by at most the larger of one step and 25 %. */
function heavierOffer(exercise: PrescribedExercise, set: SetResult, rack: Rack): LoadOffer | null {
  const step = stepAbove(rack, set.load);
  if (step === null) return null;
  const lifted = rack.system(set.load);
  const most = lifted === null ? step : rack.setting(lifted * (1 + LIMITS.jumpAfterGuess));
  // So far from failure nobody tells how many more there were: the estimate would crawl.
  const isFar = exercise.counts === 'reps' && (set.reserve ?? 0) > LIMITS.tooEasyReserve;
  const wish = isFar ? most : (wishAfter(exercise, set, rack) ?? step);
  const within = rack.loads.atOrBelow(micrograms(Math.min(wish, most)));
  const load = within !== null && within > step ? within : step;
  if (load > wish) return null;
  return { load, reason: because('offer-heavier', told(exercise, { from: set.load, load })) };
}

/** The load whose estimate gives the middle of the range at the middle of the wanted reserve. */
function wishAfter(exercise: PrescribedExercise, set: SetResult, rack: Rack): Mass | null {
  if (exercise.counts === 'seconds') return null;
  const evidence: SetEvidence = {
    load: set.load,
    reps: Math.max(1, set.count),
    reserve: set.reserve ?? exercise.reserve[0],
  };
  return loadFor(rack, middle(exercise.range), middle(exercise.reserve), evidence);
}

const told = ({ basis, counts }: PrescribedExercise, facts: Record<string, number>) => ({
  basis,
  counts,
  ...facts,
});
