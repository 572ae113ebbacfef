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
 * puts before formulas. A bare line feed ends a row too, a byte order mark is skipped, and empty
 * lines are left out.
 * @throws Refusal where a quoted field never ends, with its line.
 */
export function readCsvText(text: string): string[][] {
  const source = text.startsWith('\ufeff') ? text.slice(1) : text;
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < source.length) {
    const { value, next } = source[at] === '"' ? quoted(source, at) : plain(source, at);
    row.push(GUARDED.test(value) ? value.slice(1) : value);
    at = next;
    if (source[at] === ',') {
      at += 1;
      if (at < source.length) continue;
      row.push('');
    }
    at += source.startsWith('\r\n', at) ? 2 : 1;
    if (row.length > 1 || row[0] !== '') rows.push(row);
    row = [];
  }
  return rows;
}

function plain(source: string, from: number): { value: string; next: number } {
  let next = from;
  while (next < source.length && source[next] !== ',' && source[next] !== '\n') next += 1;
  const end = source[next - 1] === '\r' && source[next] !== ',' && next > from ? next - 1 : next;
  return { value: source.slice(from, end), next: end };
}

function quoted(source: string, from: number): { value: string; next: number } {
  let value = '';
  let at = from + 1;
  for (;;) {
    const end = source.indexOf('"', at);
    if (end < 0) {
      const line = source.slice(0, from).split('\n').length;
      throw new Refusal({
        what: `Line ${line} has a quoted field that never ends.`,
        fix: 'Close it with a " or export the file again.',
      });
    }
    value += source.slice(at, end);
    if (source[end + 1] !== '"') return { value, next: end + 1 };
    value += '"';
    at = end + 2;
  }
}

/** One row of an exported file, read by column name. Everything wrong in it is refused with its row and column. */
export interface CsvRecord {
  /** Row in the file, the heading being 1. */
  readonly row: number;
  text(column: string): string;
  number(column: string): number;
  /** Whole, and not below `least`. */
  whole(column: string, least: number): number;
  yes(column: string): boolean;
  date(column: string): Temporal.PlainDate;
  /** Epoch milliseconds. */
  instant(column: string): number;
  oneOf<T extends string>(column: string, values: readonly T[]): T;
  mass(column: string): Mass;
  empty(column: string): boolean;
}

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
    number: (column) => number(column),
    oneOf,
    empty: (column) => raw(column) === '',
    text: (column) => raw(column) || refuse(column, 'some text'),
    yes: (column) => oneOf(column, ['yes', 'no']) === 'yes',
    whole: (column, least) => {
      const wanted = `a whole number from ${least} on`;
      const found = number(column, wanted);
      return Number.isInteger(found) && found >= least ? found : refuse(column, wanted);
    },
    date: (column) => {
      try {
        return Temporal.PlainDate.from(raw(column));
      } catch {
        // Temporal says only that it could not be read; the place is what helps.
        return refuse(column, 'a date such as 2026-11-25');
      }
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
      return Math.abs(amount) <= 5000 ? mass(amount, unit) : refuse(column, 'a mass up to 5000');
    },
  };
}
