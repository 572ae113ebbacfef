import { dailyMasses } from '../cut/daily-mass.ts';
import type { Review } from '../cut/review.ts';
import { weightBand } from '../cut/weight-band.ts';
import { mondayOf } from '../cut/work-done.ts';
import type { History } from '../journal/history.ts';
import { dayNumber } from '../training/day-number.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';
import type { BodyPicture } from './page-view.ts';

/** Days before the cut that its picture begins with: the weight it began from. Ours. */
const DAYS_BEFORE = 28;
/** Without a cut there is no beginning: half a year is what can be read off. Ours. */
const DAYS_WITHOUT_CUT = 182;

/** Body weight with its trend and the planned range, from four weeks before the cut; null without a weigh-in or where none is to be shown. */
export function pictureOfBody(
  { weighIns, bodyMassOn }: Pick<History, 'weighIns' | 'bodyMassOn'>,
  { body, evidence, today }: Review,
  unit: Unit,
): BodyPicture | null {
  const { cutFrom, program } = evidence;
  const from = cutFrom
    ? cutFrom.subtract({ days: DAYS_BEFORE })
    : today.subtract({ days: DAYS_WITHOUT_CUT });
  const days = dailyMasses(weighIns).flatMap(({ date, mass }) => {
    const isShown = dayNumber(date) >= dayNumber(from) && dayNumber(date) <= dayNumber(today);
    const trend = isShown ? bodyMassOn(date) : null;
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

/** Why a page shows no body weight. */
export function whyNoBody(
  { weighIns }: Pick<History, 'weighIns'>,
  { evidence }: Pick<Review, 'evidence'>,
): string {
  if (!evidence.weightAdvice)
    return 'Body weight is not shown: advice about weight is not switched on.';
  return weighIns.length === 0
    ? 'No body weight is shown: there is no weigh-in yet.'
    : 'No body weight is shown: no weigh-in is from these weeks.';
}
