import type { Temporal } from 'temporal-polyfill';
import type { DatedMass } from '../journal/daily-mass.ts';
import type { Past } from '../progression/past.ts';
import { type Mass, micrograms } from '../training/mass.ts';
import { massTrend } from '../training/mass-trend.ts';
import type { LifterModel } from './lifter-model.ts';
import type { SeededRandom } from './seeded-random.ts';

/** Body weight over the days of a rehearsal, as it is and as the scale and the trend show it. */
export interface BodyMassCourse {
  readonly trueOn: (date: Temporal.PlainDate) => Mass;
  readonly trendOn: Past['bodyMassOn'];
  readonly weighIns: readonly DatedMass[];
}

export interface CourseOfLoss {
  readonly from: Temporal.PlainDate;
  readonly days: number;
  readonly start: Mass;
  /** % of body weight a week; negative: gained. */
  readonly loss: number;
}

/** On so many mornings the lifter steps on the scale. Ours. */
const MORNINGS_WEIGHED = 0.85;

/** Weighs the lifter through the days; always on the first. */
export function weighInCourse(
  { from, days, start, loss }: CourseOfLoss,
  model: LifterModel,
  random: SeededRandom,
): BodyMassCourse {
  const massOn = (day: number): number => start * (1 - loss / 100) ** (day / 7);
  const readings: { day: number; value: number }[] = [];
  for (let day = 0; day < days; day += 1) {
    const isWeighed = random.uniform() < MORNINGS_WEIGHED || day === 0;
    const water = 1 + model.weighNoise * random.normal();
    if (isWeighed) readings.push({ day, value: Math.round((massOn(day) * water) / TENTH) * TENTH });
  }
  const levels = massTrend(readings);
  const dayOf = (date: Temporal.PlainDate): number =>
    from.until(date, { largestUnit: 'days' }).days;
  const latest: (number | null)[] = [];
  let at = -1;
  for (let day = 0; day < days; day += 1) {
    if (readings[at + 1]?.day === day) at += 1;
    latest.push(levels[at] ?? null);
  }
  return {
    trueOn: (date) => micrograms(Math.round(massOn(dayOf(date)))),
    trendOn: (date) => {
      const level = latest[Math.min(days - 1, dayOf(date))] ?? null;
      return level === null ? null : micrograms(Math.round(level));
    },
    weighIns: readings.map(({ day, value }) => ({
      date: from.add({ days: day }),
      mass: micrograms(value),
    })),
  };
}

/** Scales show a tenth of a kilogram. */
const TENTH = 100_000_000;
