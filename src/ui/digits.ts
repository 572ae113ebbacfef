import { NARROW, type Shape, SIGNS, WIDE } from './digit-shapes.ts';

interface Size {
  readonly shapes: Readonly<Record<string, Shape>>;
  readonly tall: boolean;
  /** Each dot is drawn this many times, across and down. */
  readonly scale: 1 | 2;
}

/** Largest first. At 3 m a digit should be about 4.5 lines high (ISO 9241), so 5 is the least. */
const SIZES: readonly Size[] = [
  { shapes: WIDE, tall: true, scale: 2 },
  { shapes: WIDE, tall: false, scale: 2 },
  { shapes: WIDE, tall: true, scale: 1 },
  { shapes: NARROW, tall: true, scale: 1 },
  { shapes: WIDE, tall: false, scale: 1 },
  { shapes: NARROW, tall: false, scale: 1 },
];

/**
 * Digits and the signs `: . + - ×` in block letters, as large as fits `columns` and `rows`. Null
 * where nothing fits or a sign has no shape; the caller then writes plain text.
 */
export function blockDigits(text: string, columns: number, rows: number): readonly string[] | null {
  if (text === '') return [];
  for (const size of SIZES) {
    const dots = dotsOf(text, size);
    if (dots === null) return null;
    if (dots.length / 2 <= rows && (dots[0]?.length ?? 0) <= columns) return halfBlocks(dots);
  }
  return null;
}

/** Rows of dots, `#` where there is ink. */
export function dotsOf(text: string, { shapes, tall, scale }: Size): readonly string[] | null {
  const letters: string[][] = [];
  for (const character of text) {
    const shape = shapes[character] ?? SIGNS[character];
    if (!shape) return null;
    letters.push(shape.flatMap(([row, low, high]) => Array<string>(tall ? high : low).fill(row)));
  }
  const rows = Array.from({ length: tall ? 14 : 10 }, (_, y) =>
    letters.map((letter) => letter[y] ?? '').join('.'),
  );
  if (scale === 1) return rows;
  return rows.flatMap((row) => {
    const wide = row.replace(/./g, '$&$&');
    return [wide, wide];
  });
}

function halfBlocks(dots: readonly string[]): readonly string[] {
  return Array.from({ length: dots.length / 2 }, (_, line) => {
    const upper = dots[line * 2] ?? '';
    const lower = dots[line * 2 + 1] ?? '';
    return [...upper]
      .map((dot, x) =>
        dot === '#' ? (lower[x] === '#' ? '█' : '▀') : lower[x] === '#' ? '▄' : ' ',
      )
      .join('')
      .trimEnd();
  });
}
