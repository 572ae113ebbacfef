import { Temporal } from 'temporal-polyfill';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** A day as the lifter reads it: `2026-11-25` as `Wed 25 Nov 2026`. */
export function dayWords(day: Temporal.PlainDate | string): string {
  const date = Temporal.PlainDate.from(day);
  const weekday = WEEKDAYS[date.dayOfWeek - 1];
  return `${weekday} ${date.day} ${MONTHS[date.month - 1]} ${date.year}`;
}
