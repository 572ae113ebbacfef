import { type Line, paragraph, span } from './line.ts';

/** A sentence about a full disk, with its folder, still fits; more would push the set off the screen. */
const MOST_ROWS = 5;

const SIGN = '» ';

/** What the last key led to, where it is a problem or why nothing happened. */
export const messageLines = (message: string, columns: number): Line[] =>
  paragraph(message, columns - SIGN.length, 'alert')
    .slice(0, MOST_ROWS)
    .map((one, row) => [row === 0 ? span(SIGN, 'sign') : span(' '.repeat(SIGN.length)), ...one]);
