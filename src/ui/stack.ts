import { BLANK, type Line } from './line.ts';

/** A piece of a screen that stands or falls as a whole. */
export interface Block {
  readonly lines: readonly Line[];
  /** Blank lines wanted above it. */
  readonly above: number;
  /** The highest goes first when room is short; 0 always stays. */
  readonly spare: number;
}

export const block = (lines: readonly Line[], spare = 0, above = 0): Block => ({
  lines,
  above,
  spare,
});

/**
 * Exactly `rows` lines: `top` from above, `bottom` at the foot, with the room that is left between
 * them. Blank lines go first, then whole blocks by their `spare`.
 */
export function stacked(top: readonly Block[], bottom: readonly Block[], rows: number): Line[] {
  let kept = [...top, ...bottom].filter(({ lines }) => lines.length > 0);
  const height = (blocks: readonly Block[], air: boolean) =>
    blocks.reduce((sum, one) => sum + one.lines.length + (air ? one.above : 0), 0);
  while (height(kept, false) > rows) {
    const goes = kept.reduce((most, one) => (one.spare >= most.spare ? one : most));
    if (goes.spare === 0) break;
    kept = kept.filter((one) => one !== goes);
  }
  let air = rows - height(kept, false);
  const render = (blocks: readonly Block[]) =>
    blocks.flatMap((one) => {
      const above = Math.min(air, one.above);
      air -= above;
      return [...Array<Line>(above).fill(BLANK), ...one.lines];
    });
  const upper = render(kept.filter((one) => top.includes(one)));
  const lower = render(kept.filter((one) => bottom.includes(one)));
  const between = Math.max(0, rows - upper.length - lower.length);
  return [...upper, ...Array<Line>(between).fill(BLANK), ...lower].slice(0, rows);
}
