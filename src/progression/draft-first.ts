import type { Exercise, Plan, Range } from '../program/program.ts';
import { type Mass, NO_MASS } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { firstMiniAim } from './aims.ts';
import { type Bout, boutOf, foreignSessions, resultsOfLift } from './bout.ts';
import { exerciseFacts } from './case.ts';
import { type AskedChange, type ExerciseDraft, half } from './draft.ts';
import { firstSetEvidence, loadFor, middle } from './estimate.ts';
import type { Layoff } from './layoff.ts';
import { LIMITS } from './limits.ts';
import type { Circumstances, Past } from './past.ts';
import { madeLoadable, type Rack, shareBelow, stepShare } from './rack.ts';
import { layoffOf, painAnswer } from './read-case.ts';
import { because } from './rules/progression-rules.ts';
import { countedBouts } from './slipping.ts';
import { reserveToKeep, trackOf } from './track.ts';

interface Setting {
  readonly program: Plan;
  readonly rack: Rack;
  readonly lighter: boolean;
  readonly change: AskedChange | null;
}

/** The first session of a track. */
export function draftFirst(
  exercise: Exercise,
  past: Past,
  { today, gear }: Circumstances,
  { program, rack, lighter, change }: Setting,
): ExerciseDraft {
  const layoff = layoffOf(program, past, exercise.lift.key, today);
  const reserve = reserveToKeep(exercise, gear);
  const first = firstLoad(exercise, reserve, past, rack, layoff);
  const { load, why } = changed(exercise, rack, first, change);
  const aim = Math.floor(middle(exercise.range));
  const asks = hurtBefore(exercise, past, today);
  const gentle = lighter || (layoff?.gentle ?? false);
  const sets = exercise.style === 'cluster' ? 1 : exercise.sets;
  return {
    move: 'start',
    load,
    aims: Array.from({ length: gentle ? half(sets) : sets }, () => aim),
    mostSets: exercise.style !== 'cluster' ? 0 : gentle ? 2 : exercise.mostSets,
    miniAim: firstMiniAim(aim, null),
    low: exercise.range[0],
    top: exercise.range[1],
    reserve: layoff?.gentle ? [reserve[0] + 1, reserve[1] + 1] : reserve,
    why: asks ? [because('pain-first', exerciseFacts(exercise, { load })), ...why] : why,
    askPain: asks,
  };
}

/** Did pain stop this track before its first set ever, with nothing said to it today? */
function hurtBefore(exercise: Exercise, past: Past, today: Circumstances['today']): boolean {
  const track = trackOf(exercise);
  const last = past.results.findLast((result) => result.exercise.track === track);
  return (last?.pain ?? false) && painAnswer(past, exercise, today) === null;
}

function changed(
  exercise: Exercise,
  rack: Rack,
  first: { readonly load: Mass | null; readonly why: readonly Reason[] },
  change: AskedChange | null,
): { readonly load: Mass | null; readonly why: readonly Reason[] } {
  if (change?.kind === 'load') {
    const load = madeLoadable(rack, change.load);
    return { load, why: [because('own-load', exerciseFacts(exercise, { load }))] };
  }
  if (change?.kind === 'lighter' && first.load !== null) {
    const load = shareBelow(rack, first.load, LIMITS.painTo) ?? rack.loads.lightest;
    return {
      load,
      why: [because('pain-lighter', exerciseFacts(exercise, { load, from: first.load }))],
    };
  }
  return first;
}

interface FirstLoad {
  /** Null: the lifter is asked. */
  readonly load: Mass | null;
  readonly why: readonly Reason[];
}

/**
 * The first load of a track: 95 % of what the lift's newest counted session in another track
 * points to; without one the program's `start`, rounded down; without that the lifter is asked.
 */
function firstLoad(
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
    const load = madeNear(rack, lower, evidence.load, wish);
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

/**
 * At or below what is wanted; where loads lie so far apart that this is much less, the load that was
 * done, unless that is plainly more than the estimate gives.
 */
function madeNear(rack: Rack, lower: Mass, done: Mass, able: Mass | null): Mass {
  const made = madeLoadable(rack, lower);
  if (able === null || madeLoadable(rack, done) !== done) return made;
  const [short, over] = [stepShare(rack, made, lower), stepShare(rack, able, done)];
  const isFar = short !== null && short > LIMITS.largestJump;
  return isFar && over !== null && over <= 1 - LIMITS.newRangeTo && done > made ? done : made;
}

/** The lift's newest session in any track; one that tells about strength where there is one. */
function newestBout(past: Past, lift: string): Bout | null {
  const foreign = foreignSessions(past);
  const bouts = resultsOfLift(past, lift)
    .filter(({ session }) => !foreign.has(session))
    .map(boutOf)
    .filter((bout) => bout !== null);
  return countedBouts(bouts).at(-1) ?? bouts.at(-1) ?? null;
}
