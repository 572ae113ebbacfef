import { Temporal } from 'temporal-polyfill';
import { WrongUse } from '../text/problem.ts';

/** Year first, or last; with the same sign between. */
const YEAR_FIRST = /^(\d{4})([-./])(\d{1,2})\2(\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})([-./])(\d{1,2})\2(\d{4})$/;

/**
 * A day as it was typed: `2026-11-25`, `today`, `yesterday`, or as a locale writes it where that can
 * only mean one day: `25.11.2026`, `11/25/2026`. With dots the day comes first (CLDR: of the locales
 * that write dots none begins with the month).
 * @throws WrongUse for anything else, and for `3/4/2026`, which is two days
 */
export function readDay(text: string, name: string, today: Temporal.PlainDate): Temporal.PlainDate {
  const asked = text.trim().toLowerCase();
  if (asked === 'today') return today;
  if (asked === 'yesterday') return today.subtract({ days: 1 });
  const found = meanings(asked);
  const [day, other] = found;
  if (day && !other) return day;
  throw new WrongUse({
    what: `${name} is "${text}".`,
    ...(day && other ? { why: `That may be ${day} or ${other}.` } : {}),
    fix: `Write the day as ${today.toString()}.`,
  });
}

/** The days of the calendar that it may mean, each once. */
function meanings(text: string): readonly Temporal.PlainDate[] {
  const first = YEAR_FIRST.exec(text);
  if (first) return daysOf([[first[1], first[3], first[4]]]);
  const last = YEAR_LAST.exec(text);
  if (!last) return [];
  const [, one, sign, two, year] = last;
  const dayFirst = [year, two, one] as const;
  return daysOf(sign === '.' ? [dayFirst] : [dayFirst, [year, one, two]]);
}

function daysOf(
  written: readonly (readonly (string | undefined)[])[],
): readonly Temporal.PlainDate[] {
  const days = written.flatMap((parts) => {
    const [year = 0, month = 0, day = 0] = parts.map(Number);
    try {
      return [Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' })];
    } catch {
      // A day that no calendar has, as 2026-02-30.
      return [];
    }
  });
  return days.filter((day, at) => !days.slice(0, at).some((each) => each.equals(day)));
}
