import { countedReserve } from '../../training/effort.ts';
import { type Mass, micrograms, NO_MASS } from '../../training/mass.ts';
import { CURVE, loadForReps, oneRepMax } from '../../training/strength.ts';
import { loadsOf } from '../check/coarse-step.ts';
import type { Exercise } from '../program.ts';
import { DRAFT_LIMITS } from './draft-limits.ts';
import type { Best, Wishes } from './wishes.ts';

/** A first load, and the best that it comes from. */
export interface Start {
  readonly start: Mass;
  readonly best: Best;
  /** Share of the load that the best points to. */
  readonly share: number;
  /** The gear makes nothing heavier, though the best points higher. */
  readonly isHeaviest: boolean;
}

/**
 * The first session's load that a recent best points to: 95 % of the load for the middle of the
 * range at the middle of the wanted reserve, by the strength curve, rounded down to one that can be
 * made. Without a best of the lift itself, that of a lift like it serves, at 90 % of what the usual
 * ratio between the two gives. Null where no best says anything: too many reps, a hold, or a body
 * weight lift without a body weight.
 */
export function startFrom(exercise: Exercise, wishes: Wishes): Start | null {
  const { lift } = exercise;
  const own = wishes.bests.find((best) => best.lift === lift.key);
  if (own) return startOf(exercise, own, 1, DRAFT_LIMITS.startShare, wishes);
  const ratio = RATIOS[lift.key];
  if (!ratio) return null;
  for (const best of wishes.bests) {
    const other = RATIOS[best.lift];
    if (other?.like !== ratio.like) continue;
    const share = DRAFT_LIMITS.substituteShare;
    const found = startOf(exercise, best, ratio.share / other.share, share, wishes);
    if (found) return found;
  }
  return null;
}

function startOf(
  exercise: Exercise,
  best: Best,
  ratio: number,
  share: number,
  { bodyMass, gear }: Wishes,
): Start | null {
  const { lift, range, reserve } = exercise;
  if (lift.counts === 'seconds') return null;
  const body = lift.loading === 'bodyweight' ? bodyPart(lift.bodyShare, bodyMass) : NO_MASS;
  if (body === null) return null;
  const toFailure = best.reps + countedReserve(best.reserve);
  const lifted = body + best.load;
  if (toFailure < 1 || toFailure > CURVE.servesTo || lifted <= 0) return null;
  const max = oneRepMax(lifted, toFailure) * ratio;
  const wish = loadForReps(max, middle(range), middle(reserve)) * share - body;
  const loads = loadsOf(exercise, gear);
  const start = loads.atOrBelow(micrograms(Math.floor(wish))) ?? loads.lightest;
  const isHeaviest = loads.heaviest !== null && start === loads.heaviest && start < wish * NEAR;
  return { start, best, share, isHeaviest };
}

/** Rounding down to the next load is no limit of the gear. */
const NEAR = 0.97;

/**
 * What a lift usually comes to against another of its like, in the lift's own load (one dumbbell of
 * a pair, both plates and bar). Common practice, from memory; body weight lifts are not compared.
 */
const RATIOS: Readonly<Record<string, { readonly like: string; readonly share: number }>> = {
  ...like('squat', {
    'back-squat': 1,
    'front-squat': 0.82,
    'paused-squat': 0.9,
    'box-squat': 0.9,
    'goblet-squat': 0.4,
    'dumbbell-squat': 0.33,
    'split-squat': 0.22,
    'reverse-lunge': 0.22,
  }),
  ...like('hinge', {
    deadlift: 1,
    'sumo-deadlift': 1,
    'trap-bar-deadlift': 1.05,
    'romanian-deadlift': 0.75,
    'stiff-leg-deadlift': 0.7,
    'dumbbell-romanian-deadlift': 0.33,
    'single-leg-romanian-deadlift': 0.2,
    'hip-thrust': 0.9,
  }),
  ...like('press', {
    'bench-press': 1,
    'paused-bench-press': 0.95,
    'close-grip-bench-press': 0.9,
    'incline-bench-press': 0.8,
    'floor-press': 0.9,
    'dumbbell-bench-press': 0.4,
    'incline-dumbbell-press': 0.34,
    'dumbbell-floor-press': 0.38,
    'overhead-press': 0.62,
    'seated-barbell-press': 0.64,
    'dumbbell-shoulder-press': 0.26,
  }),
  ...like('row', {
    'barbell-row': 1,
    'dead-stop-row': 1,
    'underhand-row': 1,
    'dumbbell-row': 0.48,
    'two-dumbbell-row': 0.42,
    'chest-supported-row': 0.38,
  }),
};

/** What `lift` usually comes to as a share of `other`; null where they are not compared. */
export function usualRatio(lift: string, other: string): number | null {
  const [one, two] = [RATIOS[lift], RATIOS[other]];
  return one && two && one.like === two.like ? one.share / two.share : null;
}

function like(name: string, shares: Readonly<Record<string, number>>) {
  return Object.fromEntries(
    Object.entries(shares).map(([key, share]) => [key, { like: name, share }] as const),
  );
}

const bodyPart = (share: number | null, bodyMass: Mass | null): number | null =>
  share === null || bodyMass === null ? null : share * bodyMass;

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;
