import type { Temporal } from 'temporal-polyfill';
import { programFigures } from '../program/check/figures.ts';
import type { Program } from '../program/program.ts';
import type { Past } from '../progression/past.ts';
import type { Muscle } from '../training/lift.ts';
import { workDone } from './work-done.ts';

/**
 * Hard sets that the seven days up to and with `today` still lack of the program's average week,
 * by muscle; below 0 where more was done.
 */
export function weekLack(
  program: Program,
  past: Pick<Past, 'results' | 'sessions'>,
  today: Temporal.PlainDate,
): ReadonlyMap<Muscle, number> {
  const { hardSets: done } = workDone(
    past,
    today.subtract({ days: 6 }),
    today,
    program.daysPerWeek,
  );
  return new Map(
    programFigures(program).muscles.map(({ muscle, hardSets }) => [
      muscle,
      hardSets - (done.get(muscle) ?? 0),
    ]),
  );
}
