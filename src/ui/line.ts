import { columnsOf, wrapped } from '../text/columns.ts';
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

/** Paragraph as lines; the lines after the first hang by `hang` columns. */
export function paragraph(text: string, columns: number, role: Role = 'plain', hang = 0): Line[] {
  return wrapped(text, columns, ' '.repeat(hang)).map((one) => line(one, role));
}
