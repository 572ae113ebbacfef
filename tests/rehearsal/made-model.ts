import type { LifterModel } from '../../src/rehearsal/lifter-model.ts';
import type { SeededRandom } from '../../src/rehearsal/seeded-random.ts';
import { loadAtRepsToFailure } from '../../src/training/strength.ts';

/** The model with each of its numbers drawn from within ± `share` of what it is. */
export function varyModel(model: LifterModel, share: number, random: SeededRandom): LifterModel {
  const varied = Object.entries(model).map(([name, value]) => [
    name,
    value * (1 + share * (2 * random.uniform() - 1)),
  ]);
  return Object.fromEntries(varied) as LifterModel;
}

/** The load, in the unit of `strength`, with which the lifter can do `reps` and have `reserve` left. */
export const ableLoad = (
  strength: number,
  reps: number,
  reserve: number,
  { endurance }: Pick<LifterModel, 'endurance'>,
): number => loadAtRepsToFailure(strength, 1 + (reps + reserve - 1) / endurance);
