import type { Temporal } from 'temporal-polyfill';
import { strengthOfLifts, tells } from '../progression/lift-strength.ts';
import { LIMITS } from '../progression/limits.ts';
import type { Past } from '../progression/past.ts';
import type { OwnGrowth } from './draws.ts';

/** So old a session tells nothing of present strength. Ours. */
const STALE_DAYS = 84;

/**
 * Present strength of each lift, by the lift's key: as the estimate has it, in micrograms really
 * lifted once; of a timed hold the longest of the last session that counts, in seconds.
 */
export function knownStrengths(past: Past, today: Temporal.PlainDate): Map<string, number> {
  const since = today.subtract({ days: STALE_DAYS - LIMITS.strengthDaysBefore });
  const known = new Map<string, number>();
  for (const [lift, { level }] of strengthOfLifts(past, since, today).lifts) {
    const last = past.results.findLast(
      (result) => result.exercise.lift === lift && tells(result) && result.sets.length > 0,
    );
    const timed = last?.exercise.counts === 'seconds';
    const held = Math.max(...(last?.sets ?? []).map(({ count }) => count));
    known.set(lift, timed ? held : Math.exp(level.mean));
  }
  return known;
}

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
