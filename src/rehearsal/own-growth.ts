import type { Temporal } from 'temporal-polyfill';
import { strengthOfLifts } from '../progression/lift-strength.ts';
import { LIMITS } from '../progression/limits.ts';
import type { Past } from '../progression/past.ts';
import type { OwnGrowth } from './draw-model.ts';

/** How fast the lifter's own lifts grew in the last eight weeks, all together; null under three that are known. */
export function ownGrowth(past: Past, today: Temporal.PlainDate): OwnGrowth | null {
  const { lifts, together } = strengthOfLifts(
    past,
    today.subtract({ days: LIMITS.slipDays }),
    today,
  );
  const known = [...lifts].flatMap(([lift, { sessions }]) =>
    sessions >= LIMITS.slipSessions ? [lift] : [],
  );
  const change = together(known);
  if (!change || known.length < LIMITS.liftsTogether) return null;
  const weeks = LIMITS.slipDays / 7;
  return { mean: change.mean / weeks, error: change.error / weeks };
}
