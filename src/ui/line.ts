import { columnsOf } from './columns-of.ts';
import type { Role } from './theme.ts';

/** A piece of text and what it is for. */
export interface Span {
  readonly text: string;
  readonly role: Role;
}

/** One line of the screen. */
export type Line = readonly Span[];

export const span = (text: string, role: Role = 'plain'): Span => ({ text, role });
export const line = (text: string, role: Role = 'plain'): Line => [span(text, role)];
export const BLANK: Line = [];

export const widthOf = (of: Line): number => of.reduce((sum, { text }) => sum + columnsOf(text), 0);

export const textOf = (of: Line): string => of.map(({ text }) => text).join('');

/** Moves a line to the right by `columns`. */
export const indented = (of: Line, columns: number): Line =>
  of.length === 0 ? of : [span(' '.repeat(columns)), ...of];

/** `left` and `right` at the two ends of a line of `columns`; `right` is left out when both do not fit. */
export function spread(left: Line, right: Line, columns: number): Line {
  const gap = columns - widthOf(left) - widthOf(right);
  return gap < 2 ? left : [...left, span(' '.repeat(gap)), ...right];
}

/** Breaks text into lines of at most `columns`, at spaces where there are any. */
export function wrapped(text: string, columns: number): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (columnsOf(longer) <= columns) {
      current = longer;
      continue;
    }
    if (current !== '') lines.push(current);
    current = word;
    while (columnsOf(current) > columns) {
      lines.push(current.slice(0, columns));
      current = current.slice(columns);
    }
  }
  return current === '' ? lines : [...lines, current];
}

/** Paragraph as lines; the lines after the first hang by `hang` columns. */
export function paragraph(text: string, columns: number, role: Role = 'plain', hang = 0): Line[] {
  const [first, ...rest] = wrapped(text, columns);
  if (first === undefined) return [];
  if (rest.length === 0) return [line(first, role)];
  return [
    line(first, role),
    ...wrapped(rest.join(' '), columns - hang).map((one) => indented(line(one, role), hang)),
  ];
}
