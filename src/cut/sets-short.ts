import { Temporal } from 'temporal-polyfill';
import type { Past } from '../progression/past.ts';
import { isHardSet, reserveOf } from '../training/effort.ts';
import type { Muscle } from '../training/lift.ts';
import type { WorkDone } from './work-done.ts';

/** Of the sets that were prescribed to a muscle directly, those that do not count. */
export interface SetsShort {
  /** Not done: cut short, or left out. */
  readonly left: number;
  /** Done, but too far from failure. */
  readonly light: number;
}

/** Counts the straight sets of some days that a muscle was prescribed directly and that do not count. */
export function setsShort(
  { results }: Pick<Past, 'results'>,
  { from, to }: Pick<WorkDone, 'from' | 'to'>,
  muscle: Muscle,
): SetsShort {
  let [left, light] = [0, 0];
  for (const { exercise, sets, date } of results) {
    if (exercise.trains[muscle] !== 1 || exercise.style === 'cluster') continue;
    if (Temporal.PlainDate.compare(date, from) < 0) continue;
    if (Temporal.PlainDate.compare(date, to) > 0) continue;
    left += Math.max(0, exercise.setsPlanned - sets.length);
    if (exercise.counts === 'seconds') continue;
    light += sets.filter(
      ({ reserve }) => !isHardSet(reserveOf(reserve, exercise.reserve).reserve),
    ).length;
  }
  return { left, light };
}
