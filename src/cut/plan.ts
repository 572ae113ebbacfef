import { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import type { Pause } from './aim-in-force.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';
import type { RateOfLoss } from './rate-of-loss.ts';

/** Where a cut leads, as far as it can be told today. */
export interface CutPlan {
  readonly goal: Program['goal'];
  /** Percent of body weight a week that it is worked out with. */
  readonly rates: readonly [slow: number, fast: number];
  /** Do they come from the lifter's own trend, or from what is planned? */
  readonly measured: boolean;
  /** When the weight aimed for is there; null without one. Late is null where it may never be at this rate. */
  readonly reached: {
    readonly early: Temporal.PlainDate;
    readonly late: Temporal.PlainDate | null;
    /** Pauses of two weeks on the way, at the slow end (at the fast end where there is no slow one). */
    readonly breaks: number;
  } | null;
  /** Body weight on the day aimed for, in micrograms; null without one. */
  readonly onDate: { readonly low: number; readonly high: number } | null;
  /** Percent a week that weight and day together would take; null unless it is over the band. */
  readonly tooFast: number | null;
}

export interface PlanQuestion {
  readonly program: Pick<Program, 'goal' | 'rate'>;
  readonly today: Temporal.PlainDate;
  /** Trend of body weight today. */
  readonly now: Mass;
  /** Null in a pause. */
  readonly rate: RateOfLoss | null;
  readonly pause: Pause | null;
  /** The cut's first day, or the first after its last pause. */
  readonly since: Temporal.PlainDate;
}

/** Percent a week under which a goal is out of sight. Ours. */
const SLOWEST = 0.01;

/** 90 % of what is likely lies within so many standard errors. */
const SURE = 1.645;

/**
 * The range of days on which a weight is reached, and of weights on a day: by the lifter's own rate
 * and weight, each with the 90 % interval of its error, never faster than the band; before it is known by the band.
 * Two weeks at maintenance are counted for every sixteen of the cut (common practice). Null without
 * a goal that is below the present weight.
 */
export function planOf(question: PlanQuestion): CutPlan | null {
  const { program, now, today } = question;
  const { goal, rate: band } = program;
  const mass = goal.mass !== null && goal.mass < now ? goal.mass : null;
  if (mass !== null && isTooFar(mass, now)) return null;
  const date = goal.date === null ? null : Temporal.PlainDate.from(goal.date);
  const day = date !== null && daysBetween(today, date) > 0 ? date : null;
  if (mass === null && day === null) return null;
  const { rates, measured } = ratesOf(question);
  const [slow, fast] = rates;
  const unsure = question.rate?.kind === 'known' ? (SURE * question.rate.weightError) / 100 : 0;
  const [light, heavy] = [now * (1 - unsure), now * (1 + unsure)];
  const daysAt = (percent: number, from: number) =>
    mass === null || percent < SLOWEST
      ? null
      : withBreaks(question, Math.max(1, daysTo(mass / from, percent)));
  const [early, late] = [daysAt(fast, light), daysAt(slow, heavy)];
  const left = day === null ? null : daysOfLoss(question, daysBetween(today, day));
  const needed = mass === null || !left ? null : percentFor(mass / now, left);
  return {
    goal,
    rates,
    measured,
    reached: early && {
      early: today.add({ days: early.days }),
      late: late && late.days <= CUT_LIMITS.planDays ? today.add({ days: late.days }) : null,
      breaks: (late ?? early).breaks,
    },
    onDate:
      left === null ? null : { low: light * after(fast, left), high: heavy * after(slow, left) },
    tooFast: needed !== null && needed > band[1] ? needed : null,
  };
}

/** So far nothing is worked out: a nearer goal comes first. */
export const isTooFar = (goal: Mass, now: Mass): boolean => goal < now * CUT_LIMITS.farthestGoal;

function ratesOf({ program: { rate: band }, rate }: PlanQuestion) {
  if (rate?.kind !== 'known') return { rates: band, measured: false };
  const error = SURE * rate.standardError;
  const fast = Math.min(band[1], rate.percentAWeek + error);
  // Who stands still so far may lose as planned from now on.
  if (fast < band[0])
    return { rates: [Math.max(0, rate.percentAWeek - error), band[0]] as const, measured: true };
  return { rates: [Math.min(fast, rate.percentAWeek - error), fast] as const, measured: true };
}

const after = (percent: number, days: number): number => (1 - percent / 100) ** (days / 7);

const daysTo = (share: number, percent: number): number =>
  Math.ceil((7 * Math.log(share)) / Math.log(1 - percent / 100));

const percentFor = (share: number, days: number): number => 100 * (1 - share ** (7 / days));

/** What is left of the pause that is on comes first. */
const restOf = ({ pause, today }: PlanQuestion): number =>
  pause?.until ? daysBetween(today, pause.until) + 1 : 0;

function withBreaks(question: PlanQuestion, days: number) {
  const before = question.pause ? 0 : daysBetween(question.since, question.today);
  const breaks = Math.floor(
    (Math.min(before, CUT_LIMITS.pauseAfterDays) + days - 1) / CUT_LIMITS.pauseAfterDays,
  );
  return { days: restOf(question) + days + breaks * CUT_LIMITS.pauseDays, breaks };
}

/** Of so many days those that are no pause. */
function daysOfLoss(question: PlanQuestion, days: number): number {
  const open = days - restOf(question);
  const { breaks } = withBreaks(question, Math.max(1, open));
  return Math.max(1, open - breaks * CUT_LIMITS.pauseDays);
}

/** Where body weight should be on a day at the planned rates of loss. */
interface BandOn {
  readonly date: Temporal.PlainDate;
  /** Micrograms. */
  readonly low: number;
  readonly high: number;
}

/**
 * The planned rate of loss, in percent a week, as a range of body weight: from the trend after the
 * first week of the cut, whose water says nothing, to today. Empty before that, or without a trend.
 */
export function weightBand(
  cutFrom: Temporal.PlainDate,
  today: Temporal.PlainDate,
  [slow, fast]: readonly [number, number],
  bodyMassOn: (date: Temporal.PlainDate) => Mass | null,
): BandOn[] {
  const from = cutFrom.add({ days: CUT_LIMITS.waterDays });
  const start = bodyMassOn(from);
  const days = daysBetween(from, today);
  if (start === null || days < 1) return [];
  const after = (percent: number, passed: number) => start * (1 - percent / 100) ** (passed / 7);
  const steps = [...Array(Math.ceil(days / 7)).keys()].map((week) => week * 7);
  return [...steps, days].map((passed) => ({
    date: from.add({ days: passed }),
    low: after(fast, passed),
    high: after(slow, passed),
  }));
}
