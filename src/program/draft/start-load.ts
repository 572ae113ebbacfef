import { countedReserve } from '../../training/effort.ts';
import type { Gear } from '../../training/gear.ts';
import { type Mass, micrograms, NO_MASS } from '../../training/mass.ts';
import { CURVE, loadForReps, oneRepMax } from '../../training/strength.ts';
import { loadsOf } from '../check/coarse-step.ts';
import type { Exercise } from '../program.ts';
import { DRAFT_LIMITS } from './draft-limits.ts';
import type { Best } from './wishes.ts';

/**
 * The first session's load that a recent best points to: 95 % of the load for the middle of the
 * range at the middle of the wanted reserve, by the strength curve, rounded down to one that can be
 * made. Null where the best says nothing: too many reps, a hold, or a body weight lift without a
 * body weight.
 */
export function startLoad(
  exercise: Exercise,
  best: Best,
  bodyMass: Mass | null,
  gear: Gear,
): Mass | null {
  const { lift, range, reserve } = exercise;
  if (lift.counts === 'seconds') return null;
  const body = lift.loading === 'bodyweight' ? bodyPart(lift.bodyShare, bodyMass) : NO_MASS;
  if (body === null) return null;
  const toFailure = best.reps + countedReserve(best.reserve);
  const lifted = body + best.load;
  if (toFailure < 1 || toFailure > CURVE.servesTo || lifted <= 0) return null;
  const max = oneRepMax(lifted, toFailure);
  const wish = loadForReps(max, middle(range), middle(reserve)) * DRAFT_LIMITS.startShare - body;
  const loads = loadsOf(exercise, gear);
  return loads.atOrBelow(micrograms(Math.floor(wish))) ?? loads.lightest;
}

const bodyPart = (share: number | null, bodyMass: Mass | null): number | null =>
  share === null || bodyMass === null ? null : share * bodyMass;

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;
