import type { Temporal } from 'temporal-polyfill';
import type { History } from '../journal/history.ts';
import type { Best } from '../program/draft/wishes.ts';
import { countedReserve } from '../training/effort.ts';
import { CURVE, oneRepMax } from '../training/strength.ts';

/** Older results say little of what can be done now. Ours. */
const RECENT_DAYS = 56;

/** The strongest set of each lift in the last eight weeks, pain and lighter weeks left out. */
export function recentBests(
  { results }: Pick<History, 'results'>,
  today: Temporal.PlainDate,
): readonly Best[] {
  const from = today.subtract({ days: RECENT_DAYS }).toString();
  const bests = new Map<string, { readonly best: Best; readonly max: number }>();
  for (const { exercise, sets, date, pain, lighter } of results) {
    if (pain || lighter || exercise.counts === 'seconds' || date.toString() < from) continue;
    for (const { load, count, reserve } of sets) {
      const toFailure = count + countedReserve(reserve ?? 0);
      if (count < 1 || toFailure > CURVE.servesTo) continue;
      // Of body weight lifts the load can be none or less: more of it is still the stronger.
      const max = load > 0 ? oneRepMax(load, toFailure) : load;
      if (max <= (bests.get(exercise.lift)?.max ?? Number.NEGATIVE_INFINITY)) continue;
      const best = { lift: exercise.lift, load, reps: count, reserve: reserve ?? 0 };
      bests.set(exercise.lift, { best, max });
    }
  }
  return [...bests.values()].map(({ best }) => best);
}
