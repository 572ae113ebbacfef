import { Temporal } from 'temporal-polyfill';
import { Refusal } from '../../text/problem.ts';
import { reserveOfRpe } from '../../training/effort.ts';
import type { Lift } from '../../training/lift.ts';
import { type Mass, massOf, NO_MASS, readQuantity, type Unit } from '../../training/mass.ts';
import { readCsvText } from '../csv-text.ts';
import {
  IS_WARM_UP,
  type Meaning,
  marksWarmUp,
  type OwnColumns,
  tellColumns,
} from './own-columns.ts';
import { type DayFirst, dateIn, dayFirstIn } from './own-dates.ts';

/** What the lifter told of the table, or what is taken where they did not. */
export interface Telling {
  readonly columns: string | null;
  readonly dayFirst: DayFirst;
  /** Of loads that no heading, column or cell gives a unit. */
  readonly unit: Unit;
  /** The lifts that a name in the table may mean; it is placed where there is one. */
  readonly liftsOf: (name: string) => readonly Lift[];
  /** The last day that may have been. */
  readonly until: Temporal.PlainDate;
}

/** One set of a line. */
export interface OwnSet {
  /** Of the table, from 1. */
  readonly line: number;
  readonly date: Temporal.PlainDate;
  readonly lift: Lift;
  readonly load: Mass;
  readonly count: number;
  readonly reserve: number | null;
}

export interface OwnWeighIn {
  readonly on: string;
  readonly mass: Mass;
}

/** A line that finds no place, and why. */
export interface Unplaced {
  readonly line: number;
  readonly why: string;
}

export interface OwnTable {
  readonly columns: OwnColumns;
  readonly separator: string;
  readonly unit: Unit;
  readonly sets: readonly OwnSet[];
  readonly weighIns: readonly OwnWeighIn[];
  readonly unplaced: readonly Unplaced[];
  /** Names of lifts as the table has them, with what each may mean and how many sets it has. */
  readonly lifts: readonly {
    readonly name: string;
    readonly meant: readonly Lift[];
    readonly count: number;
  }[];
  /** Lines that say themselves that they are warm-ups. */
  readonly warmUps: number;
}

/** Nobody does more in one line; what is more is another column. Ours. */
const MOST = { reps: 200, seconds: 3600, sets: 20, kilograms: 1000 } as const;

/**
 * Reads a table of a lifter's own: whatever separates its columns, however it writes dates and
 * decimals. A line that cannot be placed is named and stops nothing.
 * @throws Refusal where no columns can be told, or days and months could be either
 */
export function readOwnTable(text: string, telling: Telling): OwnTable {
  const separator = separatorOf(text);
  const table = readCsvText(text, { delimiter: separator, relaxed: true });
  const columns = tellColumns(table, telling.columns);
  const cellOf = (row: readonly string[], meaning: Meaning): string =>
    (row[columns.places.get(meaning) ?? -1] ?? '').trim();
  const order = dayFirstIn(columns.rows.map((row) => cellOf(row, 'date')));
  if (order === 'both' && telling.dayFirst === null) throw new Refusal(EITHER);
  const dayFirst = telling.dayFirst ?? (order === 'both' ? null : order);
  const unit = columns.unit ?? telling.unit;
  const isRpe = /\brpe\b/i.test(columns.names[columns.places.get('reserve') ?? -1] ?? '');
  const reading = { ...telling, dayFirst, unit, isRpe, hasThousands: separator === ',' };
  const sets: OwnSet[] = [];
  const weighIns: OwnWeighIn[] = [];
  const unplaced: Unplaced[] = [];
  const lifts = new Map<string, { meant: readonly Lift[]; count: number }>();
  const warmUpHeading = columns.names[columns.places.get('warm-up') ?? -1] ?? '';
  let warmUps = 0;
  for (const [at, row] of columns.rows.entries()) {
    const line = at + columns.firstLine;
    if (row.every((cell) => cell.trim() === '')) continue;
    const isMarked = marksWarmUp(cellOf(row, 'warm-up'), warmUpHeading);
    if (isMarked || row.some((cell) => IS_WARM_UP.test(cell.trim()))) {
      warmUps += 1;
      continue;
    }
    const placed = placedRow((meaning) => cellOf(row, meaning), reading);
    if (typeof placed === 'string') unplaced.push({ line, why: placed });
    else {
      sets.push(...placed.sets.map((set) => ({ ...set, line })));
      weighIns.push(...placed.weighIns);
    }
    const name = cellOf(row, 'lift');
    if (name === '') continue;
    const known = lifts.get(name) ?? { meant: telling.liftsOf(name), count: 0 };
    const added = typeof placed === 'string' ? 0 : placed.sets.length;
    lifts.set(name, { ...known, count: known.count + added });
  }
  const named = [...lifts].map(([name, found]) => ({ name, ...found }));
  return { columns, separator, unit, sets, weighIns, unplaced, lifts: named, warmUps };
}

const EITHER = {
  what: 'Its dates could be day and month or month and day: none of them is past the 12th.',
  fix: 'Say which with --dates day-first or --dates month-first.',
};

/** The sign that every one of the first lines holds. */
function separatorOf(text: string): string {
  const head = text.split(/\r?\n/, 5).filter((line) => line.trim() !== '');
  // A comma may be a decimal: it separates only where nothing else does.
  return [';', '\t'].find((sign) => head.every((line) => line.includes(sign))) ?? ',';
}

interface Placed {
  readonly sets: readonly Omit<OwnSet, 'line'>[];
  readonly weighIns: readonly OwnWeighIn[];
}

/** How the cells of this table are read. */
interface Reading extends Telling {
  /** Its column of effort holds ratings of perceived exertion. */
  readonly isRpe: boolean;
  /** A comma stands before thousands: decimals have a point where commas separate. */
  readonly hasThousands: boolean;
}

/** What a line tells, or why it finds no place. */
function placedRow(cell: (meaning: Meaning) => string, telling: Reading): Placed | string {
  const date = dateIn(cell('date'), telling.dayFirst);
  if (!date) return cell('date') === '' ? 'no date' : `"${cell('date')}" is no date`;
  if (Temporal.PlainDate.compare(date, telling.until) > 0) return 'a day that is still to come';
  const weighIns = weighInsOf(cell('body-weight'), date, telling);
  if (typeof weighIns === 'string') return weighIns;
  const name = cell('lift');
  if (name === '') return weighIns.length > 0 ? { sets: [], weighIns } : 'no lift';
  const [lift, another] = telling.liftsOf(name);
  if (!lift) return `"${name}" is no lift that is known`;
  if (another) return `"${name}" may be one of several lifts`;
  // What is asked of a set and how hard it was, in one cell: 5 @ 8 are five reps at that exertion.
  const [reps, ratedReps] = ratedIn(cell('reps'));
  const counts = countsOf(reps, cell('sets'), lift);
  if (typeof counts === 'string') return counts;
  const [written, ratedLoad] = ratedIn(cell('load'));
  const rated = ratedReps || ratedLoad;
  const isThousands = telling.hasThousands && /^\d{1,3}(,\d{3})+(\.\d+)?$/.test(written);
  const loadText = isThousands ? written.replaceAll(',', '') : written;
  const load = loadOf(loadText, unitOf(cell('unit'), telling), lift);
  if (typeof load === 'string') return load;
  const reserve = effortOf(cell('reserve'), rated, telling);
  if (typeof reserve === 'string') return reserve;
  return { sets: counts.map((count) => ({ date, lift, load, count, reserve })), weighIns };
}

const ratedIn = (cell: string): readonly [text: string, rating: string] => {
  const [, text = cell, rating = ''] = /^(.*?)\s*@\s*(?:rpe\s*)?([\d.,]+)$/i.exec(cell) ?? [];
  return [text, rating];
};

/** Reps in reserve by the column of effort, else by a rating beside the load or the reps. */
function effortOf(text: string, rated: string, { isRpe }: Reading): number | null | string {
  if (text === '') return reserveOfRating(rated);
  const [, rating] = /^rpe\s*([\d.,]+)$/i.exec(text) ?? [];
  if (rating) return reserveOfRating(rating);
  return isRpe ? reserveOfRating(text) : reserveOf(text);
}

function weighInsOf(
  text: string,
  date: Temporal.PlainDate,
  telling: Telling,
): readonly OwnWeighIn[] | string {
  if (text === '') return [];
  const quantity = readQuantity(text, telling.unit);
  if (!quantity || quantity.amount <= 0) return `"${text}" is no body weight`;
  return [{ on: date.toString(), mass: massOf(quantity) }];
}

function unitOf(text: string, { unit }: Telling): Unit {
  if (/^kg|^kilo/i.test(text)) return 'kg';
  return /^lb|^pound/i.test(text) ? 'lb' : unit;
}

/** `8`, `8/8/7` of three sets, `3x8`, and a count of sets beside it; `45 s` and `1:30` of what is held. */
function countsOf(reps: string, sets: string, lift: Lift): readonly number[] | string {
  const isTimed = lift.counts === 'seconds';
  const [, times, each] = /^(\d{1,2})\s*[x×]\s*(\d{1,3})$/i.exec(reps) ?? [];
  const told = times
    ? Array<number>(Number(times)).fill(Number(each))
    : listIn(isTimed ? inSeconds(reps) : reps);
  const count = sets === '' ? 1 : Number(sets);
  if (!Number.isInteger(count) || count < 1 || count > MOST.sets)
    return `"${sets}" is no count of sets`;
  const counts = told.length === 1 ? Array<number>(count).fill(told[0] ?? 0) : told;
  const fits = counts.length > 0 && counts.length <= MOST.sets;
  const areReps = counts.every(
    (one) => Number.isInteger(one) && one >= 1 && one <= MOST[isTimed ? 'seconds' : 'reps'],
  );
  if (fits && areReps) return counts;
  return reps === '' ? 'no reps' : `"${reps}" is no count of reps`;
}

/** Each time in the text as its seconds: `1:30`, `1 min 30 s`, `1'30"`, `45"`. */
const inSeconds = (text: string): string =>
  text
    .replace(
      /(\d+) ?(?:m|min|minutes?|minuten?|['’′])\.? ?(\d{1,2}) ?(?:s|secs?|seconds?|sek|sekunden|["”″])?(?![\d:])/gi,
      (_, minutes, seconds) => `${60 * Number(minutes) + Number(seconds)}`,
    )
    .replace(/(\d) ?["”″]/g, '$1')
    .replace(/\b(\d{1,2}):(\d{2})\b/g, (_, minutes, seconds) => `${60 * minutes + Number(seconds)}`)
    .replace(/(\d) ?(s|secs?|seconds?|sek|sekunden)\b\.?/gi, '$1')
    .replace(/(\d+) ?(min|minutes?|minuten?)\b\.?/gi, (_, minutes) => `${60 * minutes}`);

const listIn = (text: string): readonly number[] =>
  text === ''
    ? []
    : text
        .replace(REPS_SAID, '')
        .split(/[\s/,;+-]+/)
        .map(Number);

/** That reps are meant, as many as went or not. */
const REPS_SAID = /^(amrap|max)\b\s*|\s*\b(reps?|wdh|wiederholungen)\.?$/gi;

function loadOf(text: string, unit: Unit, { loading, hands, name }: Lift): Mass | string {
  const isBody = loading === 'bodyweight';
  if (isBody && /^(bw|body ?weight|-|)$/i.test(text)) return NO_MASS;
  // Body weight lifts are told with it, too: BW+10; and dumbbells as a pair: 2 x 20.
  const isPair = loading === 'dumbbell' && hands === 2;
  const added = isBody
    ? text.replace(/^(bw|body ?weight)\s*([+-])\s*/i, '$2')
    : text.replace(isPair ? /^2\s*[x×]\s*/i : '', '');
  const quantity = readQuantity(added, unit);
  if (!quantity) return text === '' ? `no load for ${name}` : `"${text}" is no load`;
  const load = massOf(quantity);
  const most = massOf({ amount: MOST.kilograms, unit: 'kg' });
  if (Math.abs(load) > most || (!isBody && load < 0)) return `nobody lifts "${text}"`;
  return load;
}

/** A rating of perceived exertion as reps in reserve, the low end; of one under 5 nothing is kept. */
function reserveOfRating(text: string): number | null | string {
  if (text === '') return null;
  const rating = Number(text.replace(',', '.'));
  if (!(rating >= 1 && rating <= 10)) return `"${text}" is no rating from 1 to 10`;
  return reserveOfRpe(Math.round(rating * 2) / 2)?.[0] ?? null;
}

/** Of 1-2 or 2+ the low end; a set to failure left none. */
function reserveOf(text: string): number | string {
  if (/^(to )?fail(ed|ure)?$/i.test(text)) return 0;
  const [low = ''] = text.split(/\s*(?:[-–/]\s*\d+|\+)$/);
  const reserve = low === '' ? Number.NaN : Math.floor(Number(low.replace(',', '.')));
  return reserve >= 0 && reserve <= 10 ? reserve : `"${text}" is no count of reps in reserve`;
}
