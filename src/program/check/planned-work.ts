import { isHardSet } from '../../training/effort.ts';
import { directMuscles } from '../../training/muscles.ts';
import type { ClockedExercise } from '../../training/set-clock.ts';
import { plannedClusterHardSets } from '../../training/volume.ts';
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

/** A day as the set clock reads it. Warm-up sets are as many as the usual ramp has. */
export function clockedDay(day: Day): readonly ClockedExercise[] {
  const warm = new Set<string>();
  return day.exercises.map((exercise) => {
    const direct = directMuscles(exercise.lift.trains);
    const isFirst = !direct.some((muscle) => warm.has(muscle));
    for (const muscle of direct) warm.add(muscle);
    return {
      counts: exercise.lift.counts,
      sets: plannedCounts(exercise),
      rest: exercise.rest,
      perSide: exercise.lift.perSide,
      warmUps: warmUpSets(exercise, isFirst),
    };
  });
}

function warmUpSets({ lift, style, warmUp }: Exercise, isFirst: boolean): number {
  if (!warmUp || lift.counts === 'seconds') return 0;
  if (lift.loading === 'bodyweight') return isFirst ? 1 : 0;
  if (style === 'straight' && lift.kind === 'compound') return isFirst ? 3 : 1;
  return isFirst ? 1 : 0;
}
