import { Temporal } from 'temporal-polyfill';

const DAY_MS = 86_400_000;

/** Days from 1 January 1970 to a date: the x of every plot over time. */
export const dayNumber = (date: Temporal.PlainDate): number =>
  Date.UTC(date.year, date.month - 1, date.day) / DAY_MS;

/** The date of {@link dayNumber}. */
export function dateOfDay(day: number): Temporal.PlainDate {
  const at = new Date(Math.round(day) * DAY_MS);
  return Temporal.PlainDate.from({
    year: at.getUTCFullYear(),
    month: at.getUTCMonth() + 1,
    day: at.getUTCDate(),
  });
}
