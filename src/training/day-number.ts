import { Temporal } from 'temporal-polyfill';

const DAY_MS = 86_400_000;

/** Days from 1 January 1970 to a date: the x of every plot over time. */
export const dayNumber = (date: Temporal.PlainDate): number =>
  Date.UTC(date.year, date.month - 1, date.day) / DAY_MS;

/** The date of {@link dayNumber}. */
export function dateOfDay(day: number): Temporal.PlainDate {
  const at = new Date(Math.round(day) * DAY_MS);
  return new Temporal.PlainDate(at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate());
}

/**
 * A date as it is written, `2026-11-25`: as `Temporal.PlainDate.from`, in a tenth of its time.
 * @throws RangeError where it is none
 */
export function dateOfText(text: string): Temporal.PlainDate {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? [];
  return year === undefined
    ? Temporal.PlainDate.from(text)
    : new Temporal.PlainDate(Number(year), Number(month), Number(day));
}
