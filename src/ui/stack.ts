import { BLANK, type Line } from './line.ts';

/** A piece of a screen that stands or falls as a whole. */
export interface Block {
  readonly lines: readonly Line[];
  /** Blank lines wanted above it. */
  readonly above: number;
  /** The lower, the sooner there is room for it; 0 always stays. */
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
 * them. The blocks that always stay come first, then each other one for which there is room, by its
 * `spare`; nice ones only where every blank line has room, too.
 */
export function stacked(top: readonly Block[], bottom: readonly Block[], rows: number): Line[] {
  const all = [...top, ...bottom].filter(({ lines }) => lines.length > 0);
  const height = (blocks: readonly Block[]) =>
    blocks.reduce((sum, one) => sum + one.lines.length, 0);
  const airy = (blocks: readonly Block[]) =>
    blocks.reduce((sum, one) => sum + one.lines.length + one.above, 0);
  let kept = all.filter(({ spare }) => spare === 0);
  for (const one of all.toSorted((a, b) => a.spare - b.spare)) {
    const more = all.filter((each) => each === one || kept.includes(each));
    // What is only nice to have is not worth a screen without air.
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
