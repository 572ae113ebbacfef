import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import type { DayReading } from '../../src/training/mass-trend.ts';

/** Sixteen weeks on the scales, and what the body weighed without its passing water, by day. */
export interface MadeWeights {
  readonly readings: readonly DayReading[];
  readonly truth: readonly number[];
}

const DAYS = 112;
/** The cut begins after two weeks. */
const CUT_FROM = 14;

/** A steady loss of 0 to 1 % a week, white noise of 0.6 %, weighed on most days. */
export function plainWeights(seed: number): MadeWeights {
  const random = seededRandom(seed);
  const loss = pick([0, 0.4, 0.7, 1], random.uniform());
  let mass = 70 + 30 * random.uniform();
  const made: { readings: DayReading[]; truth: number[] } = { readings: [], truth: [] };
  for (let day = 0; day < DAYS; day += 1) {
    if (day >= CUT_FROM) mass *= 1 - loss / 100 / 7;
    made.truth.push(mass);
    const value = shown(mass * (1 + 0.006 * random.normal()));
    if (random.uniform() < 0.85 || day === 0) made.readings.push({ day, value });
  }
  return made;
}

/**
 * Shares nothing with the model: water that lasts days, a weekly and for some a monthly cycle,
 * refeeds, the water that the first days of a cut lose, rates that change, gaps, rare weighing.
 */
export function waywardWeights(seed: number): MadeWeights {
  const random = seededRandom(seed);
  const monthly = random.uniform() < 0.4 ? 0.007 : 0;
  const weekly = 0.004 * random.uniform();
  const share = 0.3 + 0.65 * random.uniform();
  const [inMonth, inWeek] = [28 * random.uniform(), 7 * random.uniform()];
  let mass = 70 + 30 * random.uniform();
  let [loss, water, feast, gap] = [-0.3 + 1.3 * random.uniform(), 0, 0, 0];
  const made: { readings: DayReading[]; truth: number[] } = { readings: [], truth: [] };
  for (let day = 0; day < DAYS; day += 1) {
    if (random.uniform() < 1 / 40) loss = -0.3 + 1.4 * random.uniform();
    if (day >= CUT_FROM) mass *= 1 - loss / 100 / 7;
    water = 0.6 * water + 0.0056 * random.normal();
    feast = 0.55 * feast + (random.uniform() < 1 / 25 ? 0.012 : 0);
    const emptied = 0.01 * (1 - Math.exp(-Math.max(0, day - CUT_FROM) / 3));
    made.truth.push(mass * (1 - emptied));
    gap = gap > 0 ? gap - 1 : random.uniform() < 1 / 60 ? 3 + Math.floor(10 * random.uniform()) : 0;
    const cycles =
      weekly * Math.cos((2 * Math.PI * (day - inWeek)) / 7) +
      monthly * Math.cos((2 * Math.PI * (day - inMonth)) / 28);
    const value = shown(mass * (1 - emptied + water + feast + cycles));
    if ((gap === 0 && random.uniform() < share) || day === 0) made.readings.push({ day, value });
  }
  return made;
}

/** Bias and root of the mean square of what a trend says too much, in percent, from the fifth week on. */
export function trendErrors(
  make: (seed: number) => MadeWeights,
  trend: (readings: readonly DayReading[]) => readonly number[],
  lifters: number,
) {
  const errors = Array.from({ length: lifters }, (_, at) => make(at + 1)).flatMap(
    ({ readings, truth }) => {
      const levels = trend(readings);
      return readings.flatMap(({ day }, at) =>
        day < 28 ? [] : [((levels[at] ?? 0) / (truth[day] ?? 1) - 1) * 100],
      );
    },
  );
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  return { bias: mean(errors), error: Math.sqrt(mean(errors.map((each) => each ** 2))) };
}

/** As scales show it. */
const shown = (mass: number): number => Math.round(mass * 10) / 10;

const pick = (of: readonly number[], share: number): number =>
  of[Math.floor(share * of.length)] ?? 0;
