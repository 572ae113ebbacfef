import { columnsOf, cutTo } from '../text/columns.ts';

export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
  /** Left out, highest number first, while the table is too wide; 0 or none stays. */
  readonly dropFirst?: number;
}

export type Row = readonly string[];

const GUTTER = 2;

/** Wider than any screen: the table is read aloud, each row as a sentence. */
export const SPOKEN_WIDTH = 10_000;

/**
 * A text table in lines of at most `width` columns. Where it is too wide, columns that may be
 * dropped go first; where even that does not do, each row becomes a block of `heading  value` lines.
 * Nothing stands in place of the headings where it is read aloud.
 */
export function textTable(
  columns: readonly Column[],
  rows: readonly Row[],
  width: number,
): string[] {
  if (width >= SPOKEN_WIDTH) return sentences(columns, rows);
  let shown = columns.map((_, index) => index);
  const widths = columns.map(({ heading }, index) =>
    rows.reduce((most, row) => Math.max(most, columnsOf(row[index] ?? '')), columnsOf(heading)),
  );
  const total = () => shown.reduce((sum, index) => sum + (widths[index] ?? 0) + GUTTER, -GUTTER);
  while (total() > width) {
    const next = mostDroppable(columns, shown);
    if (next === null) return blocks(columns, rows, width);
    shown = shown.filter((index) => index !== next);
  }
  const line = (cells: Row) =>
    shown
      .map((index) =>
        padded(cells[index] ?? '', widths[index] ?? 0, columns[index]?.align ?? 'left'),
      )
      .join(' '.repeat(GUTTER))
      .trimEnd();
  return [line(columns.map(({ heading }) => heading)), ...rows.map(line)];
}

function mostDroppable(columns: readonly Column[], shown: readonly number[]): number | null {
  let next: number | null = null;
  for (const index of shown) {
    const rank = columns[index]?.dropFirst ?? 0;
    if (rank > 0 && rank > (next === null ? 0 : (columns[next]?.dropFirst ?? 0))) next = index;
  }
  return next;
}

function padded(text: string, width: number, align: Column['align']): string {
  const space = ' '.repeat(Math.max(0, width - columnsOf(text)));
  return align === 'left' ? text + space : space + text;
}

function blocks(columns: readonly Column[], rows: readonly Row[], width: number): string[] {
  return rows.flatMap((row, at) => [
    ...(at > 0 ? [''] : []),
    ...columns.map(({ heading }, index) => cutTo(`${heading}  ${row[index] ?? ''}`.trim(), width)),
  ]);
}

/** `Back squat: kept 98 %, e1RM 133 kg.`, with an empty line where the headings would be. */
function sentences(columns: readonly Column[], rows: readonly Row[]): string[] {
  return [
    '',
    ...rows.map((row) => {
      const [name = '', ...facts] = columns.map(({ heading }, index) => {
        const value = row[index] ?? '';
        return value === '' || index === 0 ? value : `${heading} ${value}`.trim();
      });
      return `${name}: ${facts.filter((fact) => fact !== '').join(', ')}.`;
    }),
  ];
}
