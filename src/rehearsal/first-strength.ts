import type { Exercise, Program } from '../program/program.ts';
import { middle } from '../progression/estimate.ts';
import type { Loading, Pattern } from '../training/lift.ts';
import { type Mass, NO_MASS } from '../training/mass.ts';
import { oneRepMax, systemLoad } from '../training/strength.ts';

/**
 * One-repetition maximum of a lifter who has trained for a few years, as a share of body weight,
 * with a barbell. Ours: only where neither the program nor the past tells.
 */
const SHARE_OF_BODY: Readonly<Record<Pattern, number>> = {
  squat: 1.5,
  hinge: 1.7,
  lunge: 0.9,
  'horizontal-push': 1.1,
  'vertical-push': 0.7,
  'horizontal-pull': 1,
  'vertical-pull': 1.25,
  'knee-flexion': 0.5,
  'knee-extension': 0.8,
  'elbow-flexion': 0.45,
  'elbow-extension': 0.5,
  'shoulder-raise': 0.2,
  trunk: 0.7,
  'calf-raise': 1.3,
  carry: 1,
};

/** Of that maximum what one dumbbell, or another implement, can be. Ours. */
const SHARE_OF_BARBELL: Readonly<Record<Loading, number>> = {
  barbell: 1,
  dumbbell: 0.42,
  stack: 0.9,
  bodyweight: 1,
  band: 0.6,
  free: 0.6,
};

/**
 * What a lift's first exercise in the program tells about strength: a one-repetition maximum in
 * micrograms really lifted, at which `start` is right for the middle of the range; without a start
 * that of a trained lifter. Of a timed hold the seconds it can be held: a little over its range.
 */
export function firstStrength(exercise: Exercise, bodyMass: Mass): number {
  const { lift, range, reserve, start } = exercise;
  if (lift.counts === 'seconds') return range[1] * HOLD_OVER_RANGE;
  const { bodyShare } = lift;
  const lifted = bodyShare === null ? start : systemLoad(start ?? NO_MASS, bodyMass, bodyShare);
  if (lifted !== null && lifted > 0) return oneRepMax(lifted, middle(range) + middle(reserve));
  const share = SHARE_OF_BODY[lift.pattern] * SHARE_OF_BARBELL[lift.loading];
  return bodyMass * share * (lift.perSide && lift.loading === 'barbell' ? 0.5 : 1);
}

const HOLD_OVER_RANGE = 1.1;

/** First strength of every lift of the program, by its key; what is `known` already counts. */
export function firstStrengths(
  program: Program,
  bodyMass: Mass,
  known: ReadonlyMap<string, number>,
): Map<string, number> {
  const strengths = new Map<string, number>();
  for (const exercise of program.days.flatMap(({ exercises }) => exercises)) {
    const { key } = exercise.lift;
    if (strengths.has(key)) continue;
    strengths.set(key, known.get(key) ?? firstStrength(exercise, bodyMass));
  }
  return strengths;
}
