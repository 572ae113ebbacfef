import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { Reason } from '../training/rule.ts';
import { resultsSince } from './bout.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { because } from './rules/progression-rules.ts';
import { compoundsOf, slipOf, slipTogether } from './slipping.ts';

/** What the lifter says yes or no to when a lighter week is proposed, or asks for by themselves. */
export const LIGHTER_WEEK = 'lighter-week-proposed';

/**
 * The first day of the lighter week that `today` is in, or null. It runs for seven days from the
 * lifter's yes; a yes within four weeks of the last one counts for nothing.
 */
export function lighterWeekOf(past: Past, today: Temporal.PlainDate): Temporal.PlainDate | null {
  const start = lighterWeeks(past).at(-1);
  if (!start) return null;
  const days = start.until(today, { largestUnit: 'days' }).days;
  return days >= 0 && days < LIMITS.lighterWeekDays ? start : null;
}

/** May one begin today: is the last four weeks ago? */
export function mayTakeLighterWeek(past: Past, today: Temporal.PlainDate): boolean {
  const last = lighterWeeks(past).at(-1);
  const days = last?.until(today, { largestUnit: 'days' }).days;
  return days === undefined || days >= LIMITS.lighterWeekEveryDays;
}

function lighterWeeks(past: Past): readonly Temporal.PlainDate[] {
  const starts: Temporal.PlainDate[] = [];
  for (const { rule, answer, date } of past.decisions) {
    if (rule !== LIGHTER_WEEK || answer !== 'yes') continue;
    const last = starts.at(-1);
    const days = last?.until(date, { largestUnit: 'days' }).days;
    if (days === undefined || days >= LIMITS.lighterWeekEveryDays) starts.push(date);
  }
  return starts;
}

/**
 * Proposes a lighter week when the compound lifts trained within a week are slipping: all of them
 * taken together, or half of the program's, and at least two, each by itself; at most once in four
 * weeks, and not for a week after the lifter said no.
 */
export function lighterWeekProposal(
  program: Pick<Program, 'days'>,
  past: Past,
  today: Temporal.PlainDate,
): Reason | null {
  if (isAnsweredLately(past, today)) return null;
  const compounds = compoundsOf(program);
  const weekAgo = today.subtract({ days: LIMITS.lighterWeekDays });
  const lately = resultsSince(past, weekAgo).map(({ exercise }) => exercise.lift);
  const trained = new Set(lately.filter((lift) => compounds.has(lift)));
  const slipping = [...trained].filter((lift) => slipOf(past, lift, today) !== null).length;
  if (slipping >= 2 && slipping * 2 >= compounds.size) {
    return because(LIGHTER_WEEK, { slipping, compounds: compounds.size });
  }
  const together = slipTogether(past, trained, today);
  return together && because(LIGHTER_WEEK, { by: together.by, odds: together.odds });
}

function isAnsweredLately(past: Past, today: Temporal.PlainDate): boolean {
  return past.decisions.some(({ rule, answer, date }) => {
    if (rule !== LIGHTER_WEEK) return false;
    const days = date.until(today, { largestUnit: 'days' }).days;
    return days < (answer === 'yes' ? LIMITS.lighterWeekEveryDays : LIMITS.lighterWeekDays);
  });
}
