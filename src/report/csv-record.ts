import { Temporal } from 'temporal-polyfill';
import { Refusal } from '../text/problem.ts';
import { type Mass, mass } from '../training/mass.ts';

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
