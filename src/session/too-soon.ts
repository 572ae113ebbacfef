import { elapsedMs, type Reading } from '../training/reading.ts';

/** No rep is lifted, and no bar put down and taken up again, in less (ours): what comes sooner is a bounce of the key. */
export const LEAST_MS = 1_500;

/** Milliseconds from `at` until so much time has passed since an instant that a key is meant; 0 once it has. */
export function untilMeant(since: Reading, at: Reading): number {
  // A clock set back tells nothing, and must not keep the lifter from going on.
  return at.wall < since.wall ? 0 : Math.max(0, LEAST_MS - elapsedMs(since, at));
}
