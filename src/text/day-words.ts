import { Temporal } from 'temporal-polyfill';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

type Day = Temporal.PlainDate | string;

/** A month by its number, 1 to 12: `Nov`. */
export const monthWord = (month: number): string => MONTHS[month - 1] ?? '';

/** `2026-11-25` as `25 Nov`. */
export function dayAndMonth(day: Day): string {
  const date = Temporal.PlainDate.from(day);
  return `${date.day} ${monthWord(date.month)}`;
}

/** `2026-11-25` as `Wed 25 Nov`. */
export function shortDayWords(day: Day): string {
  const date = Temporal.PlainDate.from(day);
  return `${WEEKDAYS[date.dayOfWeek - 1]} ${dayAndMonth(date)}`;
}

/** A day as the lifter reads it: `2026-11-25` as `Wed 25 Nov 2026`. */
export function dayWords(day: Day): string {
  const date = Temporal.PlainDate.from(day);
  return `${shortDayWords(date)} ${date.year}`;
}
