import { LIFTER_KINDS, type LifterKindName } from './lifter-kinds.ts';
import { LIFTER_MODEL, type LifterModel } from './lifter-model.ts';
import type { SeededRandom } from './seeded-random.ts';

/** Printed 95 % intervals (Hellard 2006, J Sports Sci 24(5):509–520, nine swimmers). */
const PRINTED = { fitnessDays: [17, 59], fatigueDays: [6, 32] } as const;

/** What is ours is drawn from within this share of what it is. Ours. */
const OURS = 0.3;
const DRAWN_AROUND = ['trained', 'halfSets', 'setFatigue', 'manySets', 'deficitCost'] as const;

/** How much a lifter's own strength grew a week of late, and its standard error. */
export interface OwnGrowth {
  readonly mean: number;
  readonly error: number;
}

/** One lifter of a kind: time constants from their printed intervals, our own numbers from around what they are. */
export function drawModel(
  kind: LifterKindName,
  random: SeededRandom,
  own: OwnGrowth | null = null,
): LifterModel {
  const { changes, growthSpread } = LIFTER_KINDS[kind];
  const model: LifterModel = { ...LIFTER_MODEL, ...changes };
  const within = ([low, high]: readonly [number, number]): number => {
    const drawn = (low + high) / 2 + ((high - low) / (2 * 1.96)) * random.normal();
    return Math.max(low, Math.min(high, drawn));
  };
  const around = Object.fromEntries(
    DRAWN_AROUND.map((name) => [name, model[name] * (1 + OURS * (2 * random.uniform() - 1))]),
  );
  const [mean, error] = own ? [own.mean, own.error] : [model.growth, growthSpread];
  return {
    ...model,
    ...around,
    fitnessDays: within(PRINTED.fitnessDays),
    fatigueDays: within(PRINTED.fatigueDays),
    growth: mean + error * random.normal(),
  };
}
