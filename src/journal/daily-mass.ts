import { groups, sum } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import { dayNumber } from '../training/day-number.ts';
import { type Mass, micrograms } from '../training/mass.ts';

/** One body mass reading and its local day. */
export interface DatedMass {
  readonly date: Temporal.PlainDate;
  readonly mass: Mass;
}

/** A day's reading, and the day as a number. */
interface DailyMass extends DatedMass {
  readonly day: number;
}

/** One reading a day, in order of date: the mean where there were several. */
export function dailyMasses(readings: readonly DatedMass[]): DailyMass[] {
  return groups(readings, ({ date }) => dayNumber(date))
    .map(([day, of]) => ({
      day,
      date: of[0]!.date,
      mass: micrograms(Math.round(sum(of, ({ mass }) => mass) / of.length)),
    }))
    .sort((a, b) => a.day - b.day);
}
