import { Temporal } from 'temporal-polyfill';

/** Does 3/4/2025 mean the third of April? Null where nothing says so. */
export type DayFirst = boolean | null;

/**
 * Months in English, German, French, Spanish, Italian, Dutch and Portuguese, long and short, without
 * accents (CLDR); none of these means two months.
 */
const MONTHS: readonly RegExp[] = [
  /^(jan(uary|uar|uari|eiro|vier|v)?|janner|jann|ene(ro)?|gen(naio)?)$/,
  /^(feb(ruary|ruar|ruari|rero|braio)?|fev(rier|r|ereiro)?)$/,
  /^(mar(ch|s|zo|co|z)?|marz|mrz|maerz|maart|mrt)$/,
  /^(apr(il|ile)?|avr(il)?|abr(il)?)$/,
  /^(may|mai|mayo|maio|mei|mag(gio)?)$/,
  /^(jun(e|i|io|ho)?|juin|giu(gno)?)$/,
  /^(jul(y|i|io|ho)?|juil(let)?|lug(lio)?)$/,
  /^(aug(ust|ustus)?|aout|ago(sto)?)$/,
  /^(sept?(ember|embre|iembre)?|set(tembre|embro|iembre)?)$/,
  /^(oct(ober|obre|ubre)?|okt(ober)?|ott(obre)?|out(ubro)?)$/,
  /^nov(ember|embre|iembre|embro)?$/,
  /^(dec(ember|embre)?|dez(ember|embro)?|dic(iembre|embre)?)$/,
];

/** Days of the week in the same languages, long and short, without accents. */
const WEEKDAY =
  /^(mon|tues?|wed|thu(rs?)?|fri|sat|sun|((mon|tues|wednes|thurs|fri|satur|sun)day)|mo|di|mi|do|fr|sa|so|((mon|diens|donners|frei|sams|sonn)tag)|mittwoch|sonnabend|lun|mar|mer|jeu|ven|sam|dim|((lun|mar|mercre|jeu|vendre|same)di)|dimanche|mie|jue|vie|sab|dom|lunes|martes|miercoles|jueves|viernes|sabado|domingo|gio|((lune|marte|mercole|giove|vener)di)|sabato|domenica|ma|wo|vr|za|zo|((maan|dins|woens|donder|vrij|zater|zon)dag)|seg|ter|qua|qui|sex|((segunda|terca|quarta|quinta|sexta)(-feira)?))[.,]*\s+/i;

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T ].*)?$/;
const ALL_DIGITS = /^((?:19|20)\d{2})(\d{2})(\d{2})$/;
const DOTS = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})$/;
const SLASHES = /^(\d{1,2})([/-])(\d{1,2})\2(\d{4}|\d{2})$/;
const DAY_WORD =
  /^(\d{1,2})(?:\.|st|nd|rd|th|er)?[ .-]+(?:de )?([a-z]+)\.?,?[ -]*(?:de )?(\d{4}|\d{2})$/i;
const WORD_DAY = /^([a-z]+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/i;

/** Time of day behind a date. */
const TIME = /,? \d{1,2}:\d{2}(:\d{2})?( ?[ap]m)?$/i;

const bare = (cell: string): string =>
  cell.trim().normalize('NFD').replace(/\p{M}/gu, '').replace(TIME, '');

/**
 * The day that a cell of a table means: 2025-12-31, 20251231, 31.12.2025, 31.12.25, 31 Dec 2025,
 * 31. Dezember 2025, and 31/12/2025 or 12/31/2025 by `dayFirst`, which is only needed where both
 * could be meant; a day of the week before it and a time behind it tell nothing. Null for no date.
 */
export function dateIn(cell: string, dayFirst: DayFirst): Temporal.PlainDate | null {
  const text = bare(cell);
  // "mar" is March in one language and Tuesday in others.
  return dayIn(text, dayFirst) ?? dayIn(text.replace(WEEKDAY, ''), dayFirst);
}

function dayIn(text: string, dayFirst: DayFirst): Temporal.PlainDate | null {
  const [, y, , m, d] = YEAR_FIRST.exec(text) ?? [];
  if (y) return made(Number(y), Number(m), Number(d));
  const [, ofDigits, inDigits, onDigits] = ALL_DIGITS.exec(text) ?? [];
  if (ofDigits) return made(Number(ofDigits), Number(inDigits), Number(onDigits));
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
  if (word) return made(fullYear(inYear), monthOf(word), Number(dayOf));
  const [, first, second, third] = WORD_DAY.exec(text) ?? [];
  return first ? made(Number(third), monthOf(first), Number(second)) : null;
}

/** The order of day and month that a column shows; `both` where every one of its dates could be either. */
export function dayFirstIn(cells: readonly string[]): DayFirst | 'both' {
  const pairs = cells.flatMap((cell) => {
    const [, a, , b] = SLASHES.exec(bare(cell).replace(WEEKDAY, '')) ?? [];
    return a ? [[Number(a), Number(b)] as const] : [];
  });
  if (pairs.length === 0) return null;
  if (pairs.some(([a]) => a > 12)) return true;
  return pairs.some(([, b]) => b > 12) ? false : 'both';
}

const monthOf = (word: string): number =>
  MONTHS.findIndex((month) => month.test(word.toLowerCase())) + 1;

const fullYear = (text = ''): number => Number(text) + (text.length === 2 ? 2000 : 0);

function made(year: number, month: number, day: number): Temporal.PlainDate | null {
  try {
    return Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' });
  } catch {
    return null;
  }
}
