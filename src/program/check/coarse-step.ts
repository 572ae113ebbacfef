import type { Gear, PlateKind } from '../../training/gear.ts';
import { isLoadable, type Loads, loadsFor } from '../../training/loads.ts';
import { type Mass, micrograms, type Unit } from '../../training/mass.ts';
import { oneRepMax, repsToFailureAt } from '../../training/strength.ts';
import type { Exercise } from '../program.ts';
import { CHECK_LIMITS } from './check-limits.ts';

export const loadsOf = ({ lift, bar, step }: Exercise, gear: Gear): Loads =>
  loadsFor(gear, { loading: lift.loading, hands: lift.hands, bar, step });

/** The first load written for an exercise, or the next below that the gear can make. */
export function loadableStart(exercise: Exercise, gear: Gear): Mass | null {
  const { start } = exercise;
  const loads = loadsOf(exercise, gear);
  return start === null || isLoadable(loads, start)
    ? start
    : (loads.atOrBelow(start) ?? loads.lightest);
}

/** The first loadable load at least 1 % above; null where there is none. */
export const nextLoad = (exercise: Exercise, gear: Gear, from: Mass): Mass | null =>
  loadsOf(exercise, gear).atOrAbove(micrograms(Math.ceil(from * (1 + CHECK_LIMITS.smallestStep))));

/** A step up from the first load that reps alone cannot earn. */
export interface CoarseStep {
  readonly start: Mass;
  readonly next: Mass;
  /** Percent. */
  readonly share: number;
  /** The most reps that are tried before a step. */
  readonly reps: number;
}

/**
 * Whether the first step up is over 10 % and so large that the most reps tried at the first load
 * do not give the low end of the range at the next. The load of a body weight lift is mostly the
 * body, which the check does not know, so those are left out.
 */
export function coarseStep(exercise: Exercise, gear: Gear): CoarseStep | null {
  const { lift, range, reserve } = exercise;
  const start = loadableStart(exercise, gear);
  if (start === null || start <= 0 || lift.loading === 'bodyweight') return null;
  if (lift.counts === 'seconds') return null;
  const next = nextLoad(exercise, gear, start);
  if (next === null || next / start - 1 <= CHECK_LIMITS.largestStep) return null;
  const reps = CHECK_LIMITS.mostReps[lift.kind];
  const inReserve = (reserve[0] + reserve[1]) / 2;
  const max = oneRepMax(start, reps + inReserve);
  const repsThere = repsToFailureAt(next, max) - inReserve;
  if (repsThere >= range[0]) return null;
  return { start, next, share: Math.round((next / start - 1) * 100), reps };
}

const SMALL: Readonly<Record<Unit, readonly number[]>> = {
  kg: [1.25, 1, 0.5, 0.25],
  lb: [2.5, 1.25, 1, 0.5],
};

/** The largest of the usual small plates that would make the step small enough; null where none does. */
export function smallPlates(exercise: Exercise, gear: Gear): PlateKind | null {
  const count = exercise.lift.loading === 'dumbbell' ? 2 * exercise.lift.hands : 2;
  const kinds = SMALL[gear.unit].map(
    (amount): PlateKind => ({ stamped: { amount, unit: gear.unit }, count }),
  );
  return (
    kinds.find((plates) => {
      const richer = { ...gear, plates: [...gear.plates, plates] };
      return coarseStep(exercise, richer) === null;
    }) ?? null
  );
}
