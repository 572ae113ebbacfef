import { deviation, mean, sum } from 'd3-array';
import { Temporal } from 'temporal-polyfill';
import { type DatedMass, dailyMasses } from '../journal/daily-mass.ts';
import { TREND_DAYS } from '../journal/history.ts';
import type { Program } from '../program/program.ts';
import type { Past } from '../progression/past.ts';
import { leastSquares } from '../training/least-squares.ts';
import type { Mass } from '../training/mass.ts';
import { judgedReadings } from '../training/mass-trend.ts';
import { pauseBefore, pauseOn } from './aim-in-force.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';

/** How fast body weight falls, with how well that is known. */
export type RateOfLoss =
  | {
      readonly kind: 'known';
      /** Percent of the trend lost a week; negative while gaining. */
      readonly percentAWeek: number;
      /** Standard error of {@link percentAWeek}. */
      readonly standardError: number;
      /** Standard error of the weight that they lead to on the last day, in percent of it. */
      readonly weightError: number;
      /** Days with a reading in the window. */
      readonly weighIns: number;
      readonly from: Temporal.PlainDate;
      readonly to: Temporal.PlainDate;
    }
  | {
      readonly kind: 'unknown';
      /** Days with a reading that still count. */
      readonly weighIns: number;
      /** Days with a reading that are still to come until {@link earliest}. */
      readonly weighInsMissing: number;
      /** The first day on which the rate is known to who weighs in daily from now on. */
      readonly earliest: Temporal.PlainDate;
    };

/** The error of a rate as it is shown: no rate is known to less than the digit that is. */
export const rateErrorText = (standardError: number): string =>
  Math.max(0.1, standardError).toFixed(1);

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
 * under 7 days with a reading or 10 days from the first to the last of them. With a monthly cycle,
 * once there are days enough, each day is compared with that of four weeks before. A reading that
 * the trend hardly believes counts here no more than it does there.
 */
export function rateOfLoss(question: RateQuestion): RateOfLoss {
  return (question.monthlyCycle ? acrossCycle(question) : null) ?? slopeOfWindow(question);
}

/** A spread known from two, three or four weeks alone is wider by this: Student's 95 % points over the normal's (from memory). */
const FEW_WEEKS = [6.314, 2.92, 2.353].map((point) => point / 1.645);

/**
 * What the last four weeks lost against the four before, day by day, so that the water of the cycle
 * falls out. Its error is that of the weeks' means: water of neighbouring days goes together.
 * Ours. Null where too few days have their like four weeks before.
 */
function acrossCycle({ weighIns, today, cutFrom, bodyMassOn }: RateQuestion): RateOfLoss | null {
  const days = CUT_LIMITS.monthlyWindowDays;
  const trend = bodyMassOn(today);
  const start = cutFrom?.add({ days: CUT_LIMITS.waterDays }) ?? null;
  const byDay = new Map(
    believed(weighIns, today)
      .filter(({ date }) => start === null || Temporal.PlainDate.compare(date, start) >= 0)
      .map((reading) => [daysBetween(reading.date, today), reading]),
  );
  const weeks = new Map<number, { readonly lost: number; readonly weight: number }[]>();
  for (const [ago, { mass, trust }] of byDay) {
    const like = [0, 1, -1].flatMap((off) => byDay.get(ago + days + off) ?? [])[0];
    if (ago < 0 || ago >= days || like === undefined) continue;
    const week = Math.floor(ago / 7);
    // The variances of two readings add up.
    const weight = 2 / (1 / trust + 1 / like.trust);
    weeks.set(week, [...(weeks.get(week) ?? []), { lost: like.mass - mass, weight }]);
  }
  const lost = [...weeks.values()]
    .filter(({ length }) => length >= 2)
    .map((of) => sum(of, (each) => each.weight * each.lost) / sum(of, (each) => each.weight));
  if (trend === null || lost.length < CUT_LIMITS.fewestCycleWeeks) return null;
  const percent = (mass: number) => ((mass / (days / 7)) * 100) / trend;
  const few = FEW_WEEKS[lost.length - CUT_LIMITS.fewestCycleWeeks] ?? 1;
  const error = (few * (deviation(lost) ?? 0)) / Math.sqrt(lost.length);
  return {
    kind: 'known',
    percentAWeek: percent(mean(lost) ?? 0),
    standardError: percent(error),
    weightError: (error / trend) * 100,
    weighIns: [...weeks.values()].flat().length,
    from: today.subtract({ days: days - 1 }),
    to: today,
  };
}

function slopeOfWindow(question: RateQuestion): RateOfLoss {
  const { today, bodyMassOn } = question;
  const first = windowStart(question);
  const readings = believed(question.weighIns, today).filter(
    ({ date }) => Temporal.PlainDate.compare(date, first) >= 0,
  );
  const [from, to] = [readings[0]?.date, readings.at(-1)?.date];
  const days = from && to ? daysBetween(from, to) + 1 : 0;
  const trend = bodyMassOn(today);
  const enough = readings.length >= CUT_LIMITS.fewestWeighIns && days >= CUT_LIMITS.fewestDays;
  if (!from || !to || !enough || trend === null) {
    return { kind: 'unknown', weighIns: readings.length, ...whenKnown(question, readings) };
  }
  const line = leastSquares(
    readings.map(({ date, mass, trust }) => [daysBetween(from, date), mass, trust]),
  );
  const percent = (perDay: number) => ((perDay * 7) / trend) * 100;
  return {
    kind: 'known',
    percentAWeek: -percent(line.slope),
    standardError: percent(line.slopeError),
    weightError: (line.errorAt(daysBetween(from, to)) / trend) * 100,
    weighIns: readings.length,
    from,
    to,
  };
}

/**
 * The first day on which the rate is known to who weighs in daily from now on, and on how many days that
 * is: by then readings of now may be too old to count.
 */
function whenKnown(question: RateQuestion, readings: readonly Pick<DatedMass, 'date'>[]) {
  const { today } = question;
  const weighedToday = readings.at(-1)?.date.equals(today) === true;
  const next = weighedToday ? today.add({ days: 1 }) : today;
  // Nothing counts before the cut's first days are over, which may be far ahead.
  for (let on = later(today, windowStart(question)); ; on = on.add({ days: 1 })) {
    const first = windowStart({ ...question, today: on });
    const counted = readings.filter(({ date }) => daysBetween(first, date) >= 0);
    const daily = later(next, first);
    const weighIns = counted.length + Math.max(0, daysBetween(daily, on) + 1);
    const days = daysBetween(counted[0]?.date ?? daily, on) + 1;
    if (weighIns < CUT_LIMITS.fewestWeighIns || days < CUT_LIMITS.fewestDays) continue;
    const weighInsMissing = Math.max(0, CUT_LIMITS.fewestWeighIns - counted.length);
    return { weighInsMissing, earliest: on };
  }
}

/** One reading a day until a day, each with how far the trend of that day believes it. */
function believed(weighIns: readonly DatedMass[], today: Temporal.PlainDate) {
  const before = weighIns.findLastIndex(({ date }) => daysBetween(date, today) >= TREND_DAYS);
  const near = weighIns.slice(before + 1);
  const days = dailyMasses(near.filter(({ date }) => daysBetween(date, today) >= 0));
  const judged = judgedReadings(days.map(({ day, mass }) => ({ day, value: mass })));
  return days.map((reading, at) => ({ ...reading, trust: judged[at]?.trust ?? 1 }));
}

function windowStart({ today, cutFrom, monthlyCycle }: RateQuestion): Temporal.PlainDate {
  const days = monthlyCycle ? CUT_LIMITS.monthlyWindowDays : CUT_LIMITS.rateWindowDays;
  const opened = today.subtract({ days: days - 1 });
  return cutFrom ? later(opened, cutFrom.add({ days: CUT_LIMITS.waterDays })) : opened;
}

const later = (a: Temporal.PlainDate, b: Temporal.PlainDate): Temporal.PlainDate =>
  Temporal.PlainDate.compare(a, b) >= 0 ? a : b;

/**
 * What the rate of loss is read from, the same for everyone who tells it. Water comes back in a
 * pause and goes again: after one, as within, the rate is read anew, as from the cut's beginning.
 * @param cutFrom null outside a cut
 */
export function rateQuestion(
  {
    program,
    past,
    weighIns,
    today,
  }: {
    readonly program: Pick<Program, 'monthlyCycle'>;
    readonly past: Pick<Past, 'decisions' | 'bodyMassOn'>;
    readonly weighIns: readonly DatedMass[];
    readonly today: Temporal.PlainDate;
  },
  cutFrom: Temporal.PlainDate | null,
): RateQuestion {
  const { decisions, bodyMassOn } = past;
  const since =
    pauseOn(decisions, today)?.from ?? pauseBefore(decisions, today)?.until.add({ days: 1 });
  const anew = cutFrom && since && daysBetween(cutFrom, since) > 0 ? since : cutFrom;
  return { weighIns, today, cutFrom: anew, monthlyCycle: program.monthlyCycle, bodyMassOn };
}

export interface JudgedRate {
  readonly now: RateOfLoss;
  readonly weekAgo: RateOfLoss;
  /**
   * Where the rate lies by more than its standard error, in this weekly review and the one before.
   * `gaining`: up by more than its error; `standing`: at most half of the band's low end.
   * `not-yet`: before day 21 of the cut, or the rate is not known in both.
   */
  readonly lies: 'not-yet' | 'within' | 'above' | 'far-above' | 'below' | 'standing' | 'gaining';
}

/**
 * Judges the rate of loss against the band that the program wants, in percent a week. A single
 * review never judges: water comes and goes.
 */
export function judgeRate(
  question: RateQuestion,
  band: readonly [low: number, high: number],
): JudgedRate {
  const now = rateOfLoss(question);
  const weekAgo = rateOfLoss({ ...question, today: question.today.subtract({ days: 7 }) });
  return { now, weekAgo, lies: liesOf(question, band, now, weekAgo) };
}

function liesOf(
  { cutFrom, today }: RateQuestion,
  [low, high]: readonly [number, number],
  now: RateOfLoss,
  weekAgo: RateOfLoss,
): JudgedRate['lies'] {
  if (cutFrom === null || daysBetween(cutFrom, today) < CUT_LIMITS.rateVerdictFromDay)
    return 'not-yet';
  if (now.kind === 'unknown' || weekAgo.kind === 'unknown') return 'not-yet';
  const both = [now, weekAgo];
  const surelyAbove = (limit: number) =>
    both.every(({ percentAWeek, standardError }) => percentAWeek - standardError > limit);
  // A caution about health does not wait for certainty: both reviews saw such a rate.
  if (both.every(({ percentAWeek }) => percentAWeek > CUT_LIMITS.cautionRate)) return 'far-above';
  if (surelyAbove(high)) return 'above';
  const surelyBelow = both.every((rate) => rate.percentAWeek + rate.standardError < low);
  if (!surelyBelow) return 'within';
  if (both.every(({ percentAWeek, standardError }) => percentAWeek + standardError < 0))
    return 'gaining';
  const stands = both.every(({ percentAWeek }) => percentAWeek <= low * CUT_LIMITS.standingShare);
  return stands ? 'standing' : 'below';
}
