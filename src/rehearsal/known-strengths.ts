import type { Temporal } from 'temporal-polyfill';
import { type Bout, boutOf } from '../progression/bout.ts';
import type { Past } from '../progression/past.ts';
import { countedBouts, strengthOf } from '../progression/slipping.ts';

/** So old a session tells nothing of present strength. Ours. */
const STALE_DAYS = 84;

/**
 * Present strength of each lift as its last two sessions that count show it, the better of them:
 * micrograms really lifted once, or seconds held; by the lift's key.
 */
export function knownStrengths(past: Past, today: Temporal.PlainDate): Map<string, number> {
  const lifts = new Map<string, Bout[]>();
  for (const result of past.results) {
    const bout = boutOf(result);
    if (!bout || result.date.until(today, { largestUnit: 'days' }).days > STALE_DAYS) continue;
    const { lift } = result.exercise;
    lifts.set(lift, [...(lifts.get(lift) ?? []), bout]);
  }
  const known = [...lifts].flatMap(([lift, bouts]) => {
    const shown = countedBouts(bouts)
      .slice(-2)
      .map((bout) => strengthOf(bout, past.bodyMassOn))
      .filter((strength) => strength !== null);
    return shown.length === 0 ? [] : [[lift, Math.max(...shown)] as const];
  });
  return new Map(known);
}
