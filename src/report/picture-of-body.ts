import { dailyMasses } from '../cut/daily-mass.ts';
import { dayNumber } from '../cut/day-number.ts';
import type { Review } from '../cut/review.ts';
import { weightBand } from '../cut/weight-band.ts';
import { mondayOf } from '../cut/work-done.ts';
import type { History } from '../journal/history.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';
import type { BodyPicture } from './page-view.ts';

/** Body weight with its trend and the planned range; null without a weigh-in or where none is to be shown. */
export function pictureOfBody(
  { weighIns, bodyMassOn }: Pick<History, 'weighIns' | 'bodyMassOn'>,
  { body, evidence, today }: Review,
  unit: Unit,
): BodyPicture | null {
  const { cutFrom, program } = evidence;
  const days = dailyMasses(weighIns).flatMap(({ date, mass }) => {
    const trend = dayNumber(date) > dayNumber(today) ? null : bodyMassOn(date);
    return trend === null
      ? []
      : [{ date, reading: inUnit(mass, unit), trend: inUnit(trend, unit) }];
  });
  if (body === null || days.length === 0) return null;
  const band = cutFrom ? weightBand(cutFrom, today, program.rate, bodyMassOn) : [];
  const lastOfWeeks = days.filter(({ date }, at) => {
    const next = days[at + 1];
    return !next || !mondayOf(next.date).equals(mondayOf(date));
  });
  return {
    readings: days.map(({ date, reading }) => [dayNumber(date), reading]),
    trend: days.map(({ date, trend }) => [dayNumber(date), trend]),
    band:
      band.length === 0
        ? null
        : {
            edges: band.map(({ date, low, high }) => [
              dayNumber(date),
              inUnit(low as Mass, unit),
              inUnit(high as Mass, unit),
            ]),
          },
    bandSays: `${program.rate[0]}–${program.rate[1]} % a week`,
    table: {
      headings: ['last weigh-in of the week', `reading, ${unit}`, `trend, ${unit}`],
      rows: lastOfWeeks.map(({ date, reading, trend }) => [
        date.toString(),
        reading.toFixed(1),
        trend.toFixed(1),
      ]),
    },
  };
}
