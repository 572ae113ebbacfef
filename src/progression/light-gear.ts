import type { Exercise } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import { predictedAims } from './aims.ts';
import { type Bout, boutOf, isOnLightGear, resultsOfTrack } from './bout.ts';
import { exerciseFacts } from './case.ts';
import { type ExerciseDraft, MOVED } from './draft.ts';
import { LIMITS } from './limits.ts';
import type { Circumstances, Past, Result } from './past.ts';
import { madeLoadable, type Rack, rackFor, stepShare } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { trackOf } from './track.ts';

/** What stays true of an exercise whatever load is made for it. */
export const OF_SETS: ReadonlySet<string> = new Set([
  'slipping-cut',
  'slipping-maintain',
  'slipping-build',
  'one-set-fewer',
  'set-comes-back',
  'volume-at-floor',
]);

/**
 * Where the gear of today makes far less than the load asked for, as that of another place may, the
 * reps that are as hard with what it makes; at most as many as anybody is asked for where loads are
 * far apart.
 */
export function onLightGear(
  exercise: Exercise,
  draft: ExerciseDraft,
  rack: Rack,
  last: Bout | undefined,
): ExerciseDraft {
  const { load, reserve } = draft;
  if (load === null || !last || draft.askPain || !MOVED.has(draft.move)) return draft;
  const made = madeLoadable(rack, load);
  const short = stepShare(rack, made, load);
  if (short === null || short <= LIMITS.largestJump) return draft;
  const timed = exercise.lift.counts === 'seconds';
  const reps = exercise.lift.kind === 'isolation' ? LIMITS.mostRepsIsolation : LIMITS.mostReps;
  const most = Math.max(exercise.range[1], timed ? LIMITS.mostSeconds : reps);
  const range = [exercise.range[0], most] as const;
  const question = { last, sets: draft.aims.length, range, target: most, reserve, timed };
  const aims = timed
    ? draft.aims.map(() => exercise.range[1])
    : predictedAims(question, rack, made);
  const facts = exerciseFacts(exercise, { load: made, wish: load });
  return {
    ...draft,
    move: 'ease',
    load: made,
    aims,
    top: most,
    why: [because('gear-light', facts), ...draft.why.filter(({ rule }) => OF_SETS.has(rule))],
  };
}

/**
 * The past without the sessions of a track that were held down by the gear of their day, where today's
 * makes more: they say nothing of what the lifter is able to lift. With them go those since that stayed
 * at such a load, up to a return after time away.
 */
export function withoutLightGear(
  past: Past,
  exercise: Exercise,
  { today, gear }: Circumstances,
): Past {
  const ofTrack = resultsOfTrack(past, trackOf(exercise));
  if (!ofTrack.some(isOnLightGear)) return past;
  const { lift, bar, step } = exercise;
  const rack = rackFor({ ...lift, bar, step }, gear, past.bodyMassOn(today));
  const held = new Set<Result>();
  let before: Mass | null = null;
  let light: Mass | null = null;
  for (const result of ofTrack) {
    const load: Mass | null = boutOf(result)?.load ?? null;
    if (load === null) continue;
    // A return was worked out from what went before, so it tells of the lifter again.
    const stays = light !== null && load <= light && result.exercise.move !== 'return';
    if (before !== null && (isOnLightGear(result) || stays)) {
      if (madeLoadable(rack, before) > load) held.add(result);
      light ??= load;
    } else {
      before = load;
      light = null;
    }
  }
  return held.size === 0
    ? past
    : { ...past, results: past.results.filter((result) => !held.has(result)) };
}
