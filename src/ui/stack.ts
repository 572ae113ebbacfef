import { BLANK, type Line } from './line.ts';

/** A piece of a screen that stands or falls as a whole. */
export interface Block {
  readonly lines: readonly Line[];
  /** Blank lines wanted above it. */
  readonly above: number;
  /** The highest goes first when room is short; 0 always stays. */
  readonly spare: number;
}

/** Blocks of this spare and higher need room for every blank line. */
export const NICE = 7;

export const block = (lines: readonly Line[], spare = 0, above = 0): Block => ({
  lines,
  above,
  spare,
});

/**
 * Exactly `rows` lines: `top` from above, `bottom` at the foot, with the room that is left between
 * them. Nice blocks go first, then blank lines, then whole blocks by their `spare`; one that went and
 * for which there is room after all comes back.
 */
export function stacked(top: readonly Block[], bottom: readonly Block[], rows: number): Line[] {
  const all = [...top, ...bottom].filter(({ lines }) => lines.length > 0);
  let kept = all;
  const height = (blocks: readonly Block[]) =>
    blocks.reduce((sum, one) => sum + one.lines.length, 0);
  const airy = (blocks: readonly Block[]) =>
    blocks.reduce((sum, one) => sum + one.lines.length + one.above, 0);
  for (;;) {
    const goes = kept.reduce((most, one) => (one.spare >= most.spare ? one : most));
    // What is only nice to have is not worth a screen without air.
    const tooHigh = goes.spare >= NICE ? airy(kept) > rows : height(kept) > rows;
    if (!tooHigh || goes.spare === 0) break;
    kept = kept.filter((one) => one !== goes);
  }
  for (const one of all.toSorted((a, b) => a.spare - b.spare)) {
    const more = all.filter((each) => each === one || kept.includes(each));
    const fits = one.spare >= NICE ? airy(more) <= rows : height(more) <= rows;
    if (fits) kept = more;
  }
  const above = airOf(kept, rows - height(kept));
  const render = (blocks: readonly Block[]) =>
    blocks.flatMap((one) => [...Array<Line>(above.get(one) ?? 0).fill(BLANK), ...one.lines]);
  const upper = render(kept.filter((one) => top.includes(one)));
  const lower = render(kept.filter((one) => bottom.includes(one)));
  const between = Math.max(0, rows - upper.length - lower.length);
  return [...upper, ...Array<Line>(between).fill(BLANK), ...lower].slice(0, rows);
}

/** Blank lines above each block: everyone gets a first one before anyone gets a second. */
function airOf(blocks: readonly Block[], air: number): ReadonlyMap<Block, number> {
  const given = new Map<Block, number>();
  let left = air;
  for (let round = 0; round < 3; round++) {
    for (const one of blocks) {
      if (left === 0 || one.above <= round) continue;
      given.set(one, round + 1);
      left -= 1;
    }
  }
  return given;
}
