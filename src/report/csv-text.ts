import { CsvError, parse } from 'csv-parse/sync';
import { Temporal } from 'temporal-polyfill';
import { Refusal } from '../text/problem.ts';
import { type Mass, mass } from '../training/mass.ts';

export type Cell = string | number | null;

/** Texts that a spreadsheet would run as a formula, with any guard they already carry. */
const FORMULA = /^'*[=+\-@\t\r]/;
const GUARDED = /^'+[=+\-@\t\r]/;

/**
 * Rows as comma-separated values by RFC 4180: CRLF, quotes where needed, null as an empty field.
 * Text that a spreadsheet would take for a formula gets an apostrophe in front; numbers do not.
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * The fields of comma-separated values by RFC 4180, without the apostrophes that {@link csvText}
 * puts before formulas; of a table that is not ours `delimiter` is another sign between them, and
 * where it is `relaxed` a quote in the middle of a field is one. A bare line feed ends a row too, a byte order mark is skipped, and empty
 * lines are left out.
 * @throws Refusal where a quote is not closed or stands in the middle of a field, with its line.
 */
export function readCsvText(
  text: string,
  { delimiter = ',', relaxed = false }: { delimiter?: string; relaxed?: boolean } = {},
): string[][] {
  try {
    const rows: string[][] = parse(text, {
      bom: true,
      delimiter,
      relax_column_count: true,
      relax_quotes: relaxed,
      skip_empty_lines: true,
      record_delimiter: ['\r\n', '\n'],
    });
    return rows.map((row) => row.map((cell) => (GUARDED.test(cell) ? cell.slice(1) : cell)));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new Refusal({
      what: `Line ${error.lines ?? 1} has a quoted field that does not end where it should.`,
      fix: 'Close it with a " or export the file again.',
    });
  }
}

/** One row of an exported file, read by column name. Everything wrong in it is refused with its row and column. */
export interface CsvRecord {
  /** Row in the file, the heading being 1. */
  readonly row: number;
  readonly cells: readonly string[];
  text(column: string): string;
  number(column: string): number;
  /** Whole, from `least` to `most`, which is more than anybody does. */
  whole(column: string, least: number, most?: number): number;
  yes(column: string): boolean;
  date(column: string): Temporal.PlainDate;
  /** Epoch milliseconds. */
  instant(column: string): number;
  oneOf<T extends string>(column: string, values: readonly T[]): T;
  mass(column: string): Mass;
  empty(column: string): boolean;
}

/** Reps, seconds of a hold, sets: nobody does more. */
const MOST = 10_000;
/** A tonne, in kilograms and in pounds; the journal keeps no more. */
const MOST_MASS = { kg: 1000, lb: 2204 } as const;
/** Nobody has records on paper of before. */
const EARLIEST = Temporal.PlainDate.from('1950-01-01');

/** The record of `cells` under the headings `columns`. */
export function csvRecord(
  columns: readonly string[],
  cells: readonly string[],
  row: number,
): CsvRecord {
  const raw = (column: string) => cells[columns.indexOf(column)] ?? '';
  const refuse = (column: string, wanted: string): never => {
    throw new Refusal({
      what: `Row ${row}, column ${column}: found ${JSON.stringify(raw(column).slice(0, 40))}, expected ${wanted}.`,
      fix: 'Mend the row or export the file again; nothing was imported.',
    });
  };
  const number = (column: string, wanted = 'a number') =>
    raw(column).trim() !== '' && Number.isFinite(Number(raw(column)))
      ? Number(raw(column))
      : refuse(column, wanted);
  const oneOf = <T extends string>(column: string, values: readonly T[]): T =>
    values.find((value) => value === raw(column)) ?? refuse(column, values.join(', '));
  return {
    row,
    cells,
    number: (column) => number(column),
    oneOf,
    empty: (column) => raw(column) === '',
    text: (column) => raw(column) || refuse(column, 'some text'),
    yes: (column) => oneOf(column, ['yes', 'no']) === 'yes',
    whole: (column, least, most = MOST) => {
      const wanted = `a whole number from ${least} to ${most}`;
      const found = number(column, wanted);
      return Number.isInteger(found) && found >= least && found <= most
        ? found
        : refuse(column, wanted);
    },
    date: (column) => {
      try {
        const date = Temporal.PlainDate.from(raw(column));
        if (Temporal.PlainDate.compare(date, EARLIEST) >= 0) return date;
      } catch {
        // Temporal says only that it could not be read; the place is what helps.
      }
      return refuse(column, 'a date such as 2026-11-25');
    },
    instant: (column) => {
      try {
        return Temporal.Instant.from(raw(column)).epochMilliseconds;
      } catch {
        return refuse(column, 'an instant such as 2026-11-25T17:40:00Z');
      }
    },
    mass: (column) => {
      const unit = oneOf('unit', ['kg', 'lb']);
      const amount = number(column);
      return Math.abs(amount) <= MOST_MASS[unit]
        ? mass(amount, unit)
        : refuse(column, `a mass up to ${MOST_MASS[unit]} ${unit}`);
    },
  };
}
