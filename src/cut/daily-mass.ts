import { Temporal } from 'temporal-polyfill';
import type { WeighIn as Recorded } from '../journal/history.ts';
import { micrograms } from '../training/mass.ts';

/** One body mass reading and its local day. */
export type DatedMass = Pick<Recorded, 'date' | 'mass'>;

/** One reading a day, in order of date: the mean where there were several. */
export function dailyMasses(weighIns: readonly DatedMass[]): DatedMass[] {
  const days = new Map<string, { date: Temporal.PlainDate; sum: number; count: number }>();
  for (const { date, mass } of weighIns) {
    const key = date.toString();
    const day = days.get(key) ?? { date, sum: 0, count: 0 };
    days.set(key, { date, sum: day.sum + mass, count: day.count + 1 });
  }
  return [...days.values()]
    .sort((a, b) => Temporal.PlainDate.compare(a.date, b.date))
    .map(({ date, sum, count }) => ({ date, mass: micrograms(Math.round(sum / count)) }));
}
