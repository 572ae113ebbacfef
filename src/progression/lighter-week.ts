import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { Reason } from '../training/rule.ts';
import { boutsOf } from './bout.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { because } from './rules/progression-rules.ts';
import { slipOf } from './slipping.ts';
import { trackOf } from './track.ts';

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
 * Proposes a lighter week when half of the program's compound lifts, and at least two, are
 * slipping; at most once in four weeks, and not for a week after the lifter said no.
 */
export function lighterWeekProposal(
  program: Program,
  past: Past,
  today: Temporal.PlainDate,
): Reason | null {
  if (isAnsweredLately(past, today)) return null;
  const tracks = new Map<string, Set<string>>();
  for (const exercise of program.days.flatMap(({ exercises }) => exercises)) {
    if (exercise.lift.kind !== 'compound') continue;
    const known = tracks.get(exercise.lift.key) ?? new Set();
    tracks.set(exercise.lift.key, known.add(trackOf(exercise)));
  }
  const slipping = [...tracks.values()].filter((each) =>
    [...each].some((track) => slipsThisWeek(past, track, today)),
  ).length;
  if (slipping < 2 || slipping * 2 < tracks.size) return null;
  return because(LIGHTER_WEEK, { slipping, compounds: tracks.size });
}

function slipsThisWeek(past: Past, track: string, today: Temporal.PlainDate): boolean {
  const bouts = boutsOf(past, track);
  const last = bouts.at(-1)?.result.date;
  if (!last || last.until(today, { largestUnit: 'days' }).days > 7) return false;
  return slipOf(bouts, past.bodyMassOn, today) !== null;
}

function isAnsweredLately(past: Past, today: Temporal.PlainDate): boolean {
  return past.decisions.some(({ rule, answer, date }) => {
    if (rule !== LIGHTER_WEEK) return false;
    const days = date.until(today, { largestUnit: 'days' }).days;
    return days < (answer === 'yes' ? LIMITS.lighterWeekEveryDays : LIMITS.lighterWeekDays);
  });
}
