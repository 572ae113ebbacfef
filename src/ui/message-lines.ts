import { type Line, paragraph } from './line.ts';

/** A sentence about a full disk, with its folder, still fits; more would push the set off the screen. */
const MOST_ROWS = 5;

/** What the last key led to, where it is a problem or why nothing happened. */
export const messageLines = (message: string, columns: number): Line[] =>
  paragraph(message, columns, 'alert').slice(0, MOST_ROWS);
