import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { SessionDone } from '../progression/past.ts';

/** A training day to come. */
export interface DayAhead {
  readonly date: Temporal.PlainDate;
  /** Name of the program's day. */
  readonly day: string;
}

/** Weekdays, Monday 1, that spread so many sessions over a week. Common practice. */
const SPREAD: readonly (readonly number[])[] = [
  [],
  [1],
  [1, 4],
  [1, 3, 5],
  [1, 2, 4, 5],
  [1, 2, 3, 5, 6],
  [1, 2, 3, 4, 5, 6],
  [1, 2, 3, 4, 5, 6, 7],
];

/** The lifter's usual weekdays are read from so many days. */
const USUAL_DAYS = 28;

/**
 * Training days for so many weeks: the program's days in turn from the one that is due, on the
 * weekdays that the lifter trained on in the last four weeks, else spread over the week.
 * @param from the first date that is good for training
 */
export function daysAhead(
  program: Program,
  sessions: readonly SessionDone[],
  due: string,
  from: Temporal.PlainDate,
  weeks: number,
): DayAhead[] {
  const weekdays = usualWeekdays(sessions, from, program.daysPerWeek);
  const first = Math.max(
    0,
    program.days.findIndex(({ name }) => name === due),
  );
  const dates = [...Array(weeks * 7).keys()]
    .map((days) => from.add({ days }))
    .filter((date) => weekdays.includes(date.dayOfWeek));
  return dates.map((date, at) => ({
    date,
    day: program.days[(first + at) % program.days.length]?.name ?? due,
  }));
}

function usualWeekdays(
  sessions: readonly SessionDone[],
  from: Temporal.PlainDate,
  count: number,
): readonly number[] {
  const times = new Map<number, number>();
  for (const { date, setsDone } of sessions) {
    const ago = date.until(from, { largestUnit: 'days' }).days;
    if (setsDone === 0 || ago < 0 || ago > USUAL_DAYS) continue;
    times.set(date.dayOfWeek, (times.get(date.dayOfWeek) ?? 0) + 1);
  }
  const usual = [...times].sort((a, b) => b[1] - a[1] || a[0] - b[0]).slice(0, count);
  return usual.length < count ? (SPREAD[count] ?? []) : usual.map(([weekday]) => weekday);
}
