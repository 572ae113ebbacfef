import { Refusal } from '../text/problem.ts';

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
