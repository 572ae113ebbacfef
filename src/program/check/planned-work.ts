import { isHardSet } from '../../training/effort.ts';
import type { Paired } from '../../training/pairing.ts';
import type { ClockedExercise } from '../../training/set-clock.ts';
import { plannedClusterHardSets } from '../../training/volume.ts';
import { isWarm, usualWarmUps } from '../../training/warm-up.ts';
import type { Day, Exercise } from '../program.ts';

/** Hard sets that an exercise comes to when it is done as planned. */
export function plannedHardSets(exercise: Exercise): number {
  if (exercise.style === 'cluster') {
    return plannedClusterHardSets(exercise.range, exercise.mostSets);
  }
  if (exercise.lift.counts === 'seconds') return exercise.sets;
  return isHardSet(exercise.reserve[0]) ? exercise.sets : 0;
}

/** Reps (or seconds) of each set at the middle of its range; of a cluster the lead and its mini-sets. */
function plannedCounts(exercise: Exercise): readonly number[] {
  const [low, high] = exercise.range;
  const middle = Math.floor((low + high) / 2);
  if (exercise.style === 'straight') return Array<number>(exercise.sets).fill(middle);
  return [middle, ...Array<number>(exercise.mostSets - 1).fill(Math.floor(middle / 3))];
}

/** A day as the set clock reads it, by the warm-ups that a session has, too. */
export function clockedDay({ exercises }: Pick<Day, 'exercises'>): readonly ClockedExercise[] {
  return exercises.map((exercise, at) => {
    const { lift, style, range, rest } = exercise;
    const before = exercises.slice(0, at).map((each) => each.lift);
    const warmth = isWarm(lift.trains, before) ? 'muscles-warm' : 'first-for-muscles';
    return {
      counts: lift.counts,
      sets: plannedCounts(exercise),
      rest,
      perSide: lift.perSide,
      inOneGo: style === 'cluster',
      pair: exercise.pair,
      warmUps: exercise.warmUp ? usualWarmUps({ ...lift, style, lo: range[0], warmth }) : 0,
    };
  });
}

/** An exercise as the rules of alternating sets look at it. */
export const asPaired = ({ lift, style, bar }: Exercise): Paired => ({ ...lift, style, bar });
