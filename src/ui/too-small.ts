import { type Line, paragraph } from './line.ts';
import type { Size } from './model.ts';

/** The least that every screen fits. */
export const LEAST: Size = { columns: 34, rows: 14 };

export const isTooSmall = ({ columns, rows }: Size): boolean =>
  columns < LEAST.columns || rows < LEAST.rows;

/** In place of a screen that would not fit; the keys go on working. */
export const tooSmallLines = ({ columns, rows }: Size): Line[] =>
  [
    ...paragraph(`This window is ${columns} × ${rows}.`, columns, 'strong'),
    ...paragraph(
      `Make it at least ${LEAST.columns} × ${LEAST.rows}; the keys work all the same, q leaves.`,
      columns,
    ),
  ].slice(0, rows);
