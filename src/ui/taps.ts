import { type Line, line } from './line.ts';
import type { Size } from './model.ts';
import type { Seen } from './outcome.ts';
import { type KeyRow, labelOf } from './screen.ts';
import { keysOf } from './screens.ts';
import { marginOf, TARGET_ROWS } from './window.ts';

/** A box under the finger, and the key that it stands for. */
export interface Target {
  readonly label: string;
  readonly row: KeyRow;
}

const LEAST_COLUMNS = 8;

/** The boxes of a screen, the main one first. */
export const targetsOf = (seen: Seen): readonly Target[] =>
  keysOf(seen.screen)
    .filter(({ tap }) => tap !== undefined)
    .toSorted((a, b) => (a.tap?.at ?? 0) - (b.tap?.at ?? 0))
    .map((row) => ({ row, label: boxLabel(row, seen) }));

function boxLabel(row: KeyRow, seen: Seen): string {
  const says = row.tap?.says;
  if (says !== undefined) return typeof says === 'string' ? says : says(seen);
  return fitting(labelOf(row, seen).toUpperCase());
}

/** A label that the narrowest box takes whole. */
const fitting = (label: string): string =>
  label.length <= LEAST_COLUMNS - 2 ? label : (label.split(' ')[0] ?? label);

/** Width of each box: the main one gets what the others do not need. */
function widths(targets: readonly Target[], columns: number): readonly number[] {
  const each = Math.max(LEAST_COLUMNS, Math.floor(columns / (targets.length + 1)));
  const others = each * (targets.length - 1);
  return targets.map((_, index) => (index === 0 ? columns - others : each));
}

/** The boxes side by side, over the whole width. */
export function targetLines(targets: readonly Target[], columns: number): readonly Line[] {
  const sizes = widths(targets, columns);
  const row = (draw: (label: string, inner: number) => string) =>
    line(targets.map(({ label }, index) => draw(label, (sizes[index] ?? 2) - 2)).join(''));
  return [
    row((_, inner) => `┌${'─'.repeat(inner)}┐`),
    row((label, inner) => `│${centred(label, inner)}│`),
    row((_, inner) => `└${'─'.repeat(inner)}┘`),
  ];
}

function centred(text: string, columns: number): string {
  const shown = text.slice(0, columns);
  const left = Math.floor((columns - shown.length) / 2);
  return ' '.repeat(left) + shown + ' '.repeat(columns - shown.length - left);
}

/** The box under a tap; both count from 1. */
export function targetAt(
  targets: readonly Target[],
  { columns, rows }: Size,
  column: number,
  row: number,
): Target | null {
  if (row <= rows - TARGET_ROWS || row > rows) return null;
  let end = marginOf(columns);
  for (const [index, width] of widths(targets, columns - 2 * end).entries()) {
    end += width;
    if (column <= end) return targets[index] ?? null;
  }
  return null;
}
