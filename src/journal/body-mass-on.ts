import { bisectRight } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import { type Mass, micrograms } from '../training/mass.ts';
import { trend } from '../training/smoothing.ts';
import type { WeighIn } from './history.ts';

/** The trend on a day uses the weigh-ins of so many days before it. */
export const TREND_DAYS = 120;

/** Trend of body mass on a day; null before the first weigh-in and where the last is longer ago than {@link TREND_DAYS}. */
export function bodyMassOn(
  weighIns: readonly Pick<WeighIn, 'date' | 'mass'>[],
): (date: Temporal.PlainDate) => Mass | null {
  const byDay = new Map<number, { sum: number; count: number }>();
  for (const { date, mass } of weighIns) {
    const { sum, count } = byDay.get(dayNumber(date)) ?? { sum: 0, count: 0 };
    byDay.set(dayNumber(date), { sum: sum + mass, count: count + 1 });
  }
  const readings = [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([day, { sum, count }]) => ({ day, value: sum / count }));
  const days = readings.map(({ day }) => day);
  const known = new Map<number, Mass | null>();
  return (date) => {
    const today = dayNumber(date);
    const before = known.get(today);
    if (before !== undefined) return before;
    // Each day looks at its own readings alone, however many years there are.
    const [from, to] = [bisectRight(days, today - TREND_DAYS), bisectRight(days, today)];
    const level = trend(readings.slice(from, to)).at(-1);
    const found = level === undefined ? null : micrograms(Math.round(level));
    known.set(today, found);
    return found;
  };
}

/** Days since 1970-01-01. */
const dayNumber = ({ year, month, day }: Temporal.PlainDate): number =>
  Date.UTC(year, month - 1, day) / 86_400_000;
