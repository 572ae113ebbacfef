import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';
import { type RateOfLoss, type RateQuestion, rateOfLoss } from './rate-of-loss.ts';

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
