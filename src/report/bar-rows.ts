import { columnsOf, cutTo } from '../text/columns.ts';
import type { Glyphs } from './plot.ts';

export interface BarRow {
  readonly label: string;
  readonly value: number;
  /** The value as the lifter reads it. */
  readonly text: string;
}

const MARKS = {
  braille: { full: '█', half: '▌', band: '░', edge: '│' },
  ascii: { full: '#', half: '=', band: ':', edge: '|' },
} as const;

/**
 * Horizontal bars in lines of at most `width` columns: label, bar, value. The range from `band[0]`
 * to `band[1]` is shaded where the bar does not cover it, and its end is marked. Under 24 columns
 * the labels and values stand alone.
 */
export function barRows(
  bars: readonly BarRow[],
  band: readonly [low: number, high: number],
  width: number,
  glyphs: Glyphs,
): string[] {
  if (bars.length === 0) return [];
  const label = Math.min(16, Math.max(...bars.map((bar) => columnsOf(bar.label))));
  const text = Math.max(...bars.map((bar) => columnsOf(bar.text)));
  const columns = Math.min(40, width - label - text - 2);
  const most = Math.max(band[1], ...bars.map(({ value }) => value));
  const names = bars.map((bar) => {
    const name = cutTo(bar.label, label);
    return name + ' '.repeat(label - columnsOf(name));
  });
  if (columns < 6 || width < 24) {
    return bars.map((bar, at) => cutTo(`${names[at]} ${bar.text}`, width));
  }
  const marks = MARKS[glyphs];
  const cell = most / columns;
  const edge = Math.min(columns - 1, Math.floor(band[1] / cell - 1e-9));
  return bars.map(({ value, text: shown }, at) => {
    const drawn = Array.from({ length: columns }, (_, c) => {
      if (c === edge) return marks.edge;
      if (value >= (c + 1) * cell - 1e-9) return marks.full;
      if (value >= (c + 0.5) * cell - 1e-9) return marks.half;
      return (c + 0.5) * cell >= band[0] && (c + 0.5) * cell <= band[1] ? marks.band : ' ';
    });
    return `${names[at]} ${drawn.join('')} ${shown.padStart(text)}`;
  });
}
