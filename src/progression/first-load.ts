import type { Exercise, Range } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import { NO_MASS } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { type Bout, boutOf, foreignSessions } from './bout.ts';
import { exerciseFacts } from './case.ts';
import { firstSetEvidence, loadFor, middle } from './estimate.ts';
import type { Layoff } from './layoff.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { madeLoadable, type Rack } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { countedBouts } from './slipping.ts';

export interface FirstLoad {
  /** Null: the lifter is asked. */
  readonly load: Mass | null;
  readonly why: readonly Reason[];
}

/**
 * The first load of a track: 95 % of what the lift's newest counted session in another track
 * points to; without one the program's `start`, rounded down; without that the lifter is asked.
 */
export function firstLoad(
  exercise: Exercise,
  reserve: Range,
  past: Past,
  rack: Rack,
  layoff: Layoff | null,
): FirstLoad {
  const other = newestBout(past, exercise.lift.key);
  if (other) {
    const evidence = firstSetEvidence(other);
    const share = Math.min(LIMITS.newRangeTo, layoff?.share ?? 1);
    const wish =
      exercise.lift.counts === 'seconds'
        ? null
        : loadFor(rack, middle(exercise.range), middle(reserve), evidence);
    const lifted = rack.system(wish ?? evidence.load);
    const lower = lifted === null ? evidence.load : rack.setting(lifted * share);
    const load = madeLoadable(rack, lower);
    const reps = wish === null ? null : evidence.reps;
    return {
      load,
      why: [
        because('start-other-range', exerciseFacts(exercise, { load, from: evidence.load, reps })),
      ],
    };
  }
  if (exercise.start !== null) {
    const load = madeLoadable(rack, exercise.start);
    const rule = load === exercise.start ? 'start-program' : 'start-not-loadable';
    return { load, why: [because(rule, exerciseFacts(exercise, { load, wish: exercise.start }))] };
  }
  if (exercise.lift.loading === 'bodyweight') {
    const load = madeLoadable(rack, NO_MASS);
    return { load, why: [because('start-body', exerciseFacts(exercise, { load }))] };
  }
  const reps = exercise.range[1] + (exercise.lift.counts === 'seconds' ? 10 : 2);
  return { load: null, why: [because('start-ask', exerciseFacts(exercise, { reps }))] };
}

/** The lift's newest session in any track; one that tells about strength where there is one. */
function newestBout(past: Past, lift: string): Bout | null {
  const foreign = foreignSessions(past);
  const bouts = past.results
    .filter((result) => result.exercise.lift === lift && !foreign.has(result.session))
    .map(boutOf)
    .filter((bout) => bout !== null);
  return countedBouts(bouts).at(-1) ?? bouts.at(-1) ?? null;
}
