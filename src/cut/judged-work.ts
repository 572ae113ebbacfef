import type { Temporal } from 'temporal-polyfill';
import type { Past, SessionDone } from '../progression/past.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';
import { mondayOf, type WorkDone, workDone } from './work-done.ts';

/** The work that is judged. */
export interface JudgedWork extends WorkDone {
  /** Null for the last two full weeks; before there are two, the last 14 days, and when there will be. */
  readonly fullOn: Temporal.PlainDate | null;
}

/**
 * The last two full weeks, Monday to Sunday. The present one counts from when all that was planned
 * is done, or on its Sunday, when that can't be any more; the first only where it was begun on its Monday, or all of it was done. An unfinished
 * week is no failed one.
 * @param sessions also those whose results are too old to matter
 */
export function judgedWork(
  past: Pick<Past, 'results' | 'sessions'>,
  sessions: readonly SessionDone[],
  today: Temporal.PlainDate,
  daysPerWeek: number,
): JudgedWork {
  const missing = (monday: Temporal.PlainDate): number => {
    const week = workDone(past, monday, monday.add({ days: 6 }), daysPerWeek);
    return week.planned - week.sessions;
  };
  const isWhole = (monday: Temporal.PlainDate) => missing(monday) <= 0;
  /** One session can still be done on a Sunday, two are not made up. */
  const isPastHelp = (monday: Temporal.PlainDate) => missing(monday) > 1;
  const monday = mondayOf(today);
  const isOver = isWhole(monday) || (today.dayOfWeek === 7 && isPastHelp(monday));
  const last = isOver ? monday : monday.subtract({ weeks: 1 });
  const from = last.subtract({ weeks: 1 });
  const first = sessions.find(({ setsDone }) => setsDone > 0)?.date;
  const begun = first ? mondayOf(first) : monday;
  const full = first && !first.equals(begun) && !isWhole(begun) ? begun.add({ weeks: 1 }) : begun;
  if (first && daysBetween(full, from) >= 0) {
    return { ...workDone(past, from, last.add({ days: 6 }), daysPerWeek), fullOn: null };
  }
  const rolling = today.subtract({ days: CUT_LIMITS.workDays - 1 });
  return {
    ...workDone(past, rolling, today, daysPerWeek),
    fullOn: full.add({ days: CUT_LIMITS.workDays - 1 }),
  };
}
