/** Braille has 2 × 4 dots a cell; plain ASCII one mark a cell, for terminals without Unicode. */
export type Glyphs = 'braille' | 'ascii';

export interface DotGrid {
  /** Sets one dot; both arguments are shares of the width and height, from the top left, 0 to 1. */
  dot(x: number, y: number, as: 'line' | 'dots'): void;
  /** Joins two places by a straight line. */
  line(x0: number, y0: number, x1: number, y1: number): void;
  /** Rows of characters, a space where nothing was drawn. */
  readonly cells: readonly (readonly string[])[];
}

/** Dots of a braille cell by row and column (Unicode block U+2800, dots 1 to 8). */
const BRAILLE = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

const MARKS = { line: '*', dots: 'o' } as const;

/** An empty drawing of `columns` × `rows` characters. */
export function dotGrid(columns: number, rows: number, glyphs: Glyphs): DotGrid {
  const [across, down] = glyphs === 'braille' ? [2, 4] : [1, 1];
  const cells = Array.from({ length: rows }, () => Array.from({ length: columns }, () => ' '));
  const place = (share: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor(share * count)));

  const set = (x: number, y: number, as: 'line' | 'dots') => {
    const [column, row] = [Math.floor(x / across), Math.floor(y / down)];
    const line = cells[row];
    if (!line) return;
    if (glyphs === 'ascii') {
      line[column] = MARKS[as];
      return;
    }
    const before = line[column] === ' ' ? 0 : (line[column]?.charCodeAt(0) ?? 0x2800) - 0x2800;
    const bit = BRAILLE[y % 4]?.[x % 2 === 0 ? 0 : 1] ?? 0;
    line[column] = String.fromCharCode(0x2800 + (before | bit));
  };

  return {
    cells,
    dot(x, y, as) {
      set(place(x, columns * across), place(y, rows * down), as);
    },
    line(x0, y0, x1, y1) {
      const from = [place(x0, columns * across), place(y0, rows * down)] as const;
      const to = [place(x1, columns * across), place(y1, rows * down)] as const;
      const steps = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]), 1);
      for (let at = 0; at <= steps; at += 1) {
        const along = at / steps;
        const x = Math.round(from[0] + along * (to[0] - from[0]));
        const y = Math.round(from[1] + along * (to[1] - from[1]));
        set(x, y, 'line');
      }
    },
  };
}
