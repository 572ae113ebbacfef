import { Temporal } from 'temporal-polyfill';
import { leastSquares } from '../training/least-squares.ts';
import type { Mass } from '../training/mass.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';
import { type DatedMass, dailyMasses } from './daily-mass.ts';

/** How fast body weight falls, with how well that is known. */
export type RateOfLoss =
  | {
      readonly kind: 'known';
      /** Percent of the trend lost a week; negative while gaining. */
      readonly percentAWeek: number;
      /** Standard error of {@link percentAWeek}. */
      readonly standardError: number;
      /** Days with a reading in the window. */
      readonly weighIns: number;
      readonly from: Temporal.PlainDate;
      readonly to: Temporal.PlainDate;
    }
  | {
      readonly kind: 'unknown';
      /** Days with a reading that still count. */
      readonly weighIns: number;
      readonly weighInsMissing: number;
      /** The first day on which a rate can be known with readings enough. */
      readonly earliest: Temporal.PlainDate;
    };

export interface RateQuestion {
  readonly weighIns: readonly DatedMass[];
  readonly today: Temporal.PlainDate;
  /** First day of the cut; null outside a cut, where no days are left out. */
  readonly cutFrom: Temporal.PlainDate | null;
  /** Body weight follows a monthly cycle: the window is four weeks. */
  readonly monthlyCycle: boolean;
  /** The trend of body weight on a day. */
  readonly bodyMassOn: (date: Temporal.PlainDate) => Mass | null;
}

/**
 * The slope of the last 21 days of weigh-ins (28 with a monthly cycle) by least squares, one
 * reading a day, without the first 7 days of a cut; as a share of the trend today. Not known
 * under 7 days with a reading or 10 days from the first to the last of them.
 */
export function rateOfLoss(question: RateQuestion): RateOfLoss {
  const { today, cutFrom, bodyMassOn } = question;
  const first = windowStart(question);
  const readings = dailyMasses(
    question.weighIns.filter(
      ({ date }) =>
        Temporal.PlainDate.compare(date, first) >= 0 &&
        Temporal.PlainDate.compare(date, today) <= 0,
    ),
  );
  const [from, to] = [readings[0]?.date, readings.at(-1)?.date];
  const days = from && to ? daysBetween(from, to) + 1 : 0;
  const trend = bodyMassOn(today);
  const enough = readings.length >= CUT_LIMITS.fewestWeighIns && days >= CUT_LIMITS.fewestDays;
  if (!from || !to || !enough || trend === null) {
    const counted = from ?? (cutFrom ? later(today, first) : today);
    return {
      kind: 'unknown',
      weighIns: readings.length,
      weighInsMissing: Math.max(0, CUT_LIMITS.fewestWeighIns - readings.length),
      earliest: later(today, counted.add({ days: CUT_LIMITS.fewestDays - 1 })),
    };
  }
  const line = leastSquares(readings.map(({ date, mass }) => [daysBetween(from, date), mass]));
  const percent = (perDay: number) => ((perDay * 7) / trend) * 100;
  return {
    kind: 'known',
    percentAWeek: -percent(line.slope),
    standardError: percent(line.slopeError),
    weighIns: readings.length,
    from,
    to,
  };
}

function windowStart({ today, cutFrom, monthlyCycle }: RateQuestion): Temporal.PlainDate {
  const days = monthlyCycle ? CUT_LIMITS.monthlyWindowDays : CUT_LIMITS.rateWindowDays;
  const opened = today.subtract({ days: days - 1 });
  return cutFrom ? later(opened, cutFrom.add({ days: CUT_LIMITS.waterDays })) : opened;
}

const later = (a: Temporal.PlainDate, b: Temporal.PlainDate): Temporal.PlainDate =>
  Temporal.PlainDate.compare(a, b) >= 0 ? a : b;
