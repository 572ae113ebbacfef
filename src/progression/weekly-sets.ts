import { type Exercise, type Plan, setsOf } from '../program/program.ts';
import { directMuscles } from '../training/lift.ts';
import { plannedClusterHardSets, weeklyVolume } from '../training/volume.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import { trackOf } from './track.ts';

/**
 * Can a set of this exercise go: are two sets left, and does every muscle that it trains directly
 * keep four hard sets in the program's average week, with the sets already dropped taken off?
 */
export function maySpareSet(
  program: Plan,
  exercise: Exercise,
  dropped: ReadonlySet<string>,
): boolean {
  if (setsOf(exercise) - 1 < LIMITS.fewestSets) return false;
  const without = new Set([...dropped, trackOf(exercise)]);
  const rotation = program.days.flatMap(({ exercises }) => exercises);
  const perRotation = weeklyVolume(
    rotation.map((each) => ({
      trains: each.lift.trains,
      hardSets: hardSets(each, without.has(trackOf(each)) ? 1 : 0),
    })),
  );
  const rotations = program.daysPerWeek / program.days.length;
  return directMuscles(exercise.lift.trains).every(
    (muscle) => (perRotation.get(muscle) ?? 0) * rotations >= LIMITS.fewestWeeklySets,
  );
}

/** Hard sets of an exercise as planned, so many sets or mini-sets dropped. */
function hardSets(exercise: Exercise, dropped: number): number {
  const sets = setsOf(exercise) - dropped;
  return exercise.style === 'cluster' ? plannedClusterHardSets(exercise.range, sets) : sets;
}

/** Tracks of the program whose last session was done with a set dropped. */
export function tracksWithDrop(program: Plan, past: Past): ReadonlySet<string> {
  const tracks = new Set(program.days.flatMap(({ exercises }) => exercises.map(trackOf)));
  const dropped = [...tracks].filter((track) => {
    const last = past.results.findLast(
      ({ exercise, lighter }) => exercise.track === track && !lighter,
    );
    return last?.exercise.why.some(({ rule }) => rule === 'one-set-fewer') ?? false;
  });
  return new Set(dropped);
}
