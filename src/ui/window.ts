import { BLANK, type Line, line } from './line.ts';

/**
 * `rows` lines out of more, from `scroll` on; the first and the last say so where there is more
 * that way.
 */
export function windowOf(lines: readonly Line[], rows: number, scroll: number): Line[] {
  if (lines.length <= rows) return [...lines, ...Array<Line>(rows - lines.length).fill(BLANK)];
  const from = Math.min(Math.max(0, scroll), lines.length - rows);
  const shown = lines.slice(from, from + rows);
  if (from > 0) shown[0] = line('↑ more', 'quiet');
  if (from + rows < lines.length) shown[rows - 1] = line('↓ more', 'quiet');
  return shown;
}

/** Where to scroll so that the lines from `start` to `end` can be seen, the start before all. */
export function scrollTo(start: number, end: number, rows: number): number {
  // One line at either edge may be taken by the word that there is more.
  const least = end - rows + 1;
  return Math.max(0, Math.min(start - 1, least));
}

/** Rows that the boxes for taps take at the foot of the screen; a finger needs at least two. */
export const TARGET_ROWS = 3;

/** Blank columns at either side of every screen. */
export const marginOf = (columns: number): number => (columns >= 60 ? 2 : 1);
