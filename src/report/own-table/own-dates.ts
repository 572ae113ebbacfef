import { Temporal } from 'temporal-polyfill';

/** Does 3/4/2025 mean the third of April? Null where nothing says so. */
export type DayFirst = boolean | null;

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T ].*)?$/;
const DOTS = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})$/;
const SLASHES = /^(\d{1,2})([/-])(\d{1,2})\2(\d{4}|\d{2})$/;
const DAY_WORD = /^(\d{1,2})\.? ([a-z]{3})[a-z]*\.?,? (\d{4})$/i;
const WORD_DAY = /^([a-z]{3})[a-z]*\.? (\d{1,2}),? (\d{4})$/i;

/** Day of the week before a date, in the two languages that months are read in or dots come from. */
const WEEKDAY =
  /^(mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|(mon|tues|wednes|thurs|fri|satur|sun)day|mo|di|mi|do|fr|sa|so|(mon|diens|donners|frei|sams|sonn)tag|mittwoch)\b[.,]*\s+/i;

/** Time of day behind a date. */
const TIME = /,? \d{1,2}:\d{2}(:\d{2})?( ?[ap]m)?$/i;

const bare = (cell: string): string => cell.trim().replace(WEEKDAY, '').replace(TIME, '');

/**
 * The day that a cell of a table means: 2025-12-31, 31.12.2025, 31.12.25, 31 Dec 2025, and 31/12/2025
 * or 12/31/2025 by `dayFirst`, which is only needed where both could be meant; a day of the week
 * before it and a time behind it tell nothing. Null for no date.
 */
export function dateIn(cell: string, dayFirst: DayFirst): Temporal.PlainDate | null {
  const text = bare(cell);
  const [, y, , m, d] = YEAR_FIRST.exec(text) ?? [];
  if (y) return made(Number(y), Number(m), Number(d));
  // With dots the day comes first (CLDR: of the locales that write dots none begins with the month).
  const [, day, month, year] = DOTS.exec(text) ?? [];
  if (day) return made(fullYear(year), Number(month), Number(day));
  const [, a, , b, c] = SLASHES.exec(text) ?? [];
  if (a) {
    const isDayFirst = Number(a) > 12 || (Number(b) <= 12 && dayFirst !== false);
    const [inMonth, ofYear] = isDayFirst ? [a, b] : [b, a];
    return made(fullYear(c), Number(ofYear), Number(inMonth));
  }
  const [, dayOf, word, inYear] = DAY_WORD.exec(text) ?? [];
  if (word) return made(Number(inYear), monthOf(word), Number(dayOf));
  const [, first, second, third] = WORD_DAY.exec(text) ?? [];
  return first ? made(Number(third), monthOf(first), Number(second)) : null;
}

/** The order of day and month that a column shows; `both` where every one of its dates could be either. */
export function dayFirstIn(cells: readonly string[]): DayFirst | 'both' {
  const pairs = cells.flatMap((cell) => {
    const [, a, , b] = SLASHES.exec(bare(cell)) ?? [];
    return a ? [[Number(a), Number(b)] as const] : [];
  });
  if (pairs.length === 0) return null;
  if (pairs.some(([a]) => a > 12)) return true;
  return pairs.some(([, b]) => b > 12) ? false : 'both';
}

const monthOf = (word: string): number => MONTHS.indexOf(word.toLowerCase()) + 1;

const fullYear = (text = ''): number => Number(text) + (text.length === 2 ? 2000 : 0);

function made(year: number, month: number, day: number): Temporal.PlainDate | null {
  try {
    return Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' });
  } catch {
    return null;
  }
}
