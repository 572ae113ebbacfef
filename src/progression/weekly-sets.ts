import type { Exercise, Program } from '../program/program.ts';
import { directMuscles } from '../training/muscles.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { trackOf } from './track.ts';

/**
 * Can a set of this exercise go: are two sets left, and does every muscle that it trains directly
 * keep four hard sets in the program's average week, with the sets already dropped taken off?
 */
export function maySpareSet(
  program: Program,
  exercise: Exercise,
  dropped: ReadonlySet<string>,
): boolean {
  if (setsOf(exercise) - 1 < LIMITS.fewestSets) return false;
  const without = new Set([...dropped, trackOf(exercise)]);
  return directMuscles(exercise.lift.trains).every((muscle) => {
    const perRotation = program.days
      .flatMap(({ exercises }) => exercises)
      .map(
        (each) =>
          (each.lift.trains[muscle] ?? 0) * (hardSets(each) - (without.has(trackOf(each)) ? 1 : 0)),
      )
      .reduce((sum, sets) => sum + sets, 0);
    const weekly = (perRotation * program.daysPerWeek) / program.days.length;
    return weekly >= LIMITS.fewestWeeklySets;
  });
}

/** Straight sets, or the lead and mini-sets of a cluster. */
export const setsOf = (exercise: Exercise): number =>
  exercise.style === 'cluster' ? exercise.mostSets : exercise.sets;

/** Hard sets of an exercise as planned. A cluster's mini-sets count for half a set each here. */
function hardSets(exercise: Exercise): number {
  return exercise.style === 'cluster' ? 1 + (exercise.mostSets - 1) / 2 : exercise.sets;
}

/** Tracks of the program whose last session was done with a set dropped. */
export function tracksWithDrop(program: Program, past: Past): ReadonlySet<string> {
  const last = new Map<string, boolean>();
  for (const { exercise, lighter } of past.results) {
    if (!lighter)
      last.set(
        exercise.track,
        exercise.why.some(({ rule }) => rule === 'one-set-fewer'),
      );
  }
  const tracks = program.days.flatMap(({ exercises }) => exercises.map(trackOf));
  return new Set(tracks.filter((track) => last.get(track)));
}
