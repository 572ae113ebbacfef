import type { Phase } from './phase.ts';

/**
 * A rest as a fuse that burns down from the right: the line is time left, the post marks the early
 * end. A cell changes only every few seconds and nothing stands behind it, so it costs next to
 * nothing to keep.
 */
export function restLine(phase: Extract<Phase, { kind: 'resting' }>, columns: number): string {
  const { rest } = phase.running;
  const whole = rest.to * 1000;
  const cells = (ms: number) => Math.round((ms / whole) * columns);
  const left = Math.max(0, cells(whole - phase.elapsedMs));
  const post = rest.from < rest.to ? cells(whole - rest.from * 1000) : -1;
  // Blanks at its end would be written anew each time the line gets shorter.
  return Array.from({ length: columns }, (_, x) => (x === post ? '╂' : x < left ? '━' : ' '))
    .join('')
    .trimEnd();
}
