import { Refusal } from '../../text/problem.ts';
import { safeText } from '../../text/safe-text.ts';
import type { Unit } from '../../training/mass.ts';
import { dateIn } from './own-dates.ts';

/** What a table of a lifter's own may tell; a set needs the first four, a weigh-in date and body weight. */
export const MEANINGS = [
  'date',
  'lift',
  'load',
  'reps',
  'sets',
  'reserve',
  'unit',
  'body-weight',
  'warm-up',
] as const;
export type Meaning = (typeof MEANINGS)[number];

/** Headings by which a column is known, in the languages that neighbours write in. Ours. */
const HEADINGS: Readonly<Record<Meaning, RegExp>> = {
  date: /^(date|datum|fecha|jour)$/,
  lift: /^(exercise|lift|movement|übung|uebung|ejercicio|exercice|oefening)( name)?$/,
  load: /^(weight|load|kg|kgs|lbs?|gewicht|last|peso|carga|poids|charge)$/,
  reps: /^(reps?|repetitions?|wdh|wiederholungen|repeticiones|répétitions)$/,
  sets: /^(sets|sätze|saetze|series|séries)$/,
  reserve: /^(rir|rpe|reserve|reps in reserve|in reserve|left)$/,
  unit: /^(units?|einheit|unidad|unité)$/,
  'body-weight': /^(body ?weight|body ?mass|körpergewicht|koerpergewicht)$/,
  'warm-up': /^((is )?warm[- ]?ups?( sets?)?|aufwärmen|aufwaermen|(set )?(type|kind)|typ|art)\??$/,
};

/** What a set that only warmed up is called, in a column of any name. Ours. */
export const IS_WARM_UP = /^(warm[- ]?ups?( set)?|aufwärm(en|satz)|aufwaerm(en|satz))$/i;

/** What a column says that tells which sets warmed up. Ours. */
const MARKED = /^(w|wu|yes|y|ja|j|true|wahr|x|✓|✔|✅)$/i;

/** Does the cell of the column of warm-ups mark its set as one? What is not known marks none. */
export const marksWarmUp = (cell: string, heading: string): boolean =>
  IS_WARM_UP.test(cell) ||
  MARKED.test(cell) ||
  // In a column of kinds a 1 may be anything.
  (cell === '1' && /^(is )?warm/.test(plain(heading)));

/** Which column tells what: place in the row, from 0. */
export type Places = ReadonlyMap<Meaning, number>;

export interface OwnColumns {
  readonly names: readonly string[];
  readonly places: Places;
  /** Unit that the heading of the loads names; null where it names none. */
  readonly unit: Unit | null;
  /** Rows behind the headings. */
  readonly rows: readonly (readonly string[])[];
  /** Line of the first of them in the file. */
  readonly firstLine: number;
}

/**
 * Tells the columns of a table: those that the lifter named, the others by their headings, dates by
 * what stands in them. Without headings columns are called by their number.
 * @param told `date=Datum, load=Gewicht`; null where nothing was told
 * @throws Refusal for a column that is not there, and where one that is needed is not to be found
 */
export function tellColumns(
  table: readonly (readonly string[])[],
  told: string | null,
): OwnColumns {
  const [first = [], ...others] = table;
  const hasHeadings = !first.some((cell) => dateIn(cell, null) !== null);
  const names = hasHeadings ? first.map((cell) => cell.trim()) : first.map((_, at) => `${at + 1}`);
  const rows = hasHeadings ? others : table;
  const places = new Map<Meaning, number>(told === null ? [] : toldPlaces(told, names));
  for (const [at, name] of names.entries()) {
    const meaning = MEANINGS.find((one) => HEADINGS[one].test(plain(name)));
    const isTaken = [...places.values()].includes(at);
    if (meaning && !isTaken && !places.has(meaning)) places.set(meaning, at);
  }
  if (!places.has('date')) {
    const at = names.findIndex((_, column) => isOfDates(rows, column));
    if (at >= 0) places.set('date', at);
  }
  const needed = places.has('lift') || !places.has('body-weight') ? SET_NEEDS : WEIGH_IN_NEEDS;
  const missing = needed.filter((meaning) => !places.has(meaning));
  if (missing.length > 0) throw new Refusal(notFound(missing, names));
  const heading = names[places.get('load') ?? places.get('body-weight') ?? -1] ?? '';
  return { names, places, unit: unitIn(heading), rows, firstLine: hasHeadings ? 2 : 1 };
}

const SET_NEEDS: readonly Meaning[] = ['date', 'lift', 'load', 'reps'];
const WEIGH_IN_NEEDS: readonly Meaning[] = ['date', 'body-weight'];

/** A heading without its unit and its ornaments: `Weight (kg)` is `weight`. */
const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[([].*?[)\]]/g, '')
    .replace(/[_.:]/g, ' ')
    .replace(/(?<=\S)\s+(in )?(kgs?|lbs?)$/, '')
    .trim();

function unitIn(heading: string): Unit | null {
  if (/\bkgs?\b|kilo/i.test(heading)) return 'kg';
  return /\blbs?\b|pound/i.test(heading) ? 'lb' : null;
}

/** Most cells of it are dates. Ours: four of five, where a total or a note stands among them. */
function isOfDates(rows: readonly (readonly string[])[], column: number): boolean {
  const cells = rows.map((row) => row[column] ?? '').filter((cell) => cell.trim() !== '');
  const dates = cells.filter((cell) => dateIn(cell, null) !== null);
  return cells.length > 0 && dates.length >= cells.length * 0.8;
}

function toldPlaces(told: string, names: readonly string[]): (readonly [Meaning, number])[] {
  return told.split(',').map((part) => {
    const [left = '', ...right] = part.split('=');
    const meaning = MEANINGS.find((one) => one === left.trim().toLowerCase());
    const wanted = right.join('=').trim();
    if (!meaning || wanted === '') {
      throw new Refusal({
        what: `"${safeText(part.trim())}" names no column.`,
        fix: `Write --columns "date=Day, load=Weight", with any of ${MEANINGS.join(', ')} before the sign.`,
      });
    }
    const at = names.findIndex((name) => name.toLowerCase() === wanted.toLowerCase());
    if (at >= 0) return [meaning, at] as const;
    throw new Refusal({
      what: `The table has no column "${safeText(wanted)}".`,
      fix: `It has ${listed(names)}.`,
    });
  });
}

const listed = (names: readonly string[]): string =>
  names.map((name) => `"${safeText(name)}"`).join(', ');

const notFound = (missing: readonly Meaning[], names: readonly string[]) => ({
  what: `No column for ${missing.join(', ')} was found; the table has ${listed(names) || 'no columns'}.`,
  fix: `Name them: --columns "${missing.map((one) => `${one}=HEADING`).join(', ')}".`,
});
