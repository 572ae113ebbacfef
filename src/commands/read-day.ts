import type { Temporal } from 'temporal-polyfill';
import { dateIn } from '../report/own-table/own-dates.ts';
import { WrongUse } from '../text/problem.ts';

/**
 * A day as it was typed: `2026-11-25`, `today`, `yesterday`, or as a locale writes it where that can
 * only mean one day: `25.11.2026`, `11/25/2026`, `25 Nov 2026`.
 * @throws WrongUse for anything else, and for `3/4/2026`, which is two days
 */
export function readDay(text: string, name: string, today: Temporal.PlainDate): Temporal.PlainDate {
  const asked = text.trim().toLowerCase();
  if (asked === 'today') return today;
  if (asked === 'yesterday') return today.subtract({ days: 1 });
  // In a column of dates its other rows tell what a year of two digits is; here 25-11-26 could be either end.
  const hasYear = /\d{4}/.test(asked);
  const day = hasYear ? dateIn(asked, true) : null;
  const other = hasYear ? dateIn(asked, false) : null;
  if (day && other?.equals(day)) return day;
  throw new WrongUse({
    what: `${name} is "${text}".`,
    ...(day && other ? { why: `That may be ${day} or ${other}.` } : {}),
    fix: `Write the day as ${today.toString()}.`,
  });
}
