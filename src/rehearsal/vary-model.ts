import type { LifterModel } from './lifter-model.ts';
import type { SeededRandom } from './seeded-random.ts';

/** The model with each of its numbers drawn from within ± `share` of what it is. */
export function varyModel(model: LifterModel, share: number, random: SeededRandom): LifterModel {
  const varied = Object.entries(model).map(([name, value]) => [
    name,
    value * (1 + share * (2 * random.uniform() - 1)),
  ]);
  return Object.fromEntries(varied) as LifterModel;
}
