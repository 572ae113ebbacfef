import { loadAtRepsToFailure } from '../training/strength.ts';
import type { LifterModel } from './lifter-model.ts';

/** The load, in the unit of `strength`, with which the lifter can do `reps` and have `reserve` left. */
export function ableLoad(
  strength: number,
  reps: number,
  reserve: number,
  { endurance }: Pick<LifterModel, 'endurance'>,
): number {
  return loadAtRepsToFailure(strength, 1 + (reps + reserve - 1) / endurance);
}
