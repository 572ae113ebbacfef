import type { SetPlace } from './events.ts';
import type { DoneSet, ExerciseState, LiftWork, SessionState } from './state.ts';

/** The set that comes next, or null when every set is done or left out. */
export function nextSet(state: Pick<SessionState, 'exercises' | 'chosen'>): SetPlace | null {
  const { exercises, chosen } = state;
  const first = chosen !== null && exercises[chosen] && !isOver(exercises[chosen]) ? chosen : null;
  const exercise = first ?? exercises.findIndex((each) => !isOver(each));
  const found = exercises[exercise];
  return found ? { exercise, ...placeWithin(found) } : null;
}

/** Is nothing of the exercise left to do? */
export function isOver(exercise: ExerciseState): boolean {
  if (exercise.leftOut) return true;
  return isCluster(exercise)
    ? exercise.clusterEnd !== null || exercise.done.length >= plannedSets(exercise)
    : exercise.done.length + exercise.skipped >= plannedSets(exercise);
}

/**
 * Work sets that the exercise comes to: of a cluster the most it may have, else the straight sets
 * with those that the lifter added, less what was done of it as another lift.
 */
export function plannedSets(exercise: ExerciseState): number {
  const { prescribed, added, earlier } = exercise;
  if (prescribed.minis) return prescribed.minis.mostSets;
  const before = earlier.reduce((sum, work) => sum + setsCounted(work), 0);
  return Math.max(1, prescribed.sets.length - before) + added;
}

/** Work sets done and skipped; a cluster counts as one. */
export const setsCounted = (work: LiftWork): number =>
  isCluster(work) ? Math.min(1, work.done.length) : work.done.length + work.skipped;

export const isCluster = ({ prescribed }: LiftWork): boolean => prescribed.minis !== null;

function placeWithin(exercise: ExerciseState): Omit<SetPlace, 'exercise'> {
  const { done, skipped, warmUpsDone, warmUpsSkipped, prescribed } = exercise;
  const begun = done.length + skipped > 0;
  if (!begun && !warmUpsSkipped && warmUpsDone < prescribed.warmUp.length) {
    return { role: 'warm-up', index: warmUpsDone };
  }
  if (!isCluster(exercise)) return { role: 'straight', index: done.length + skipped };
  return done.length === 0 ? { role: 'lead', index: 0 } : { role: 'mini', index: done.length - 1 };
}

/** Every work on a track within an exercise, lifts that were given up first. */
export const worksOf = (exercise: ExerciseState): readonly LiftWork[] => [
  ...exercise.earlier,
  exercise,
];

/** Every work set of the session, by exercise and then in order. */
export const setsDone = ({ exercises }: Pick<SessionState, 'exercises'>): readonly DoneSet[] =>
  exercises.flatMap((exercise) => worksOf(exercise).flatMap(({ done }) => done));

/** Sets saved as planned that the lifter has not looked at: they wait for one confirming key. */
export const openSets = (state: Pick<SessionState, 'exercises'>): readonly DoneSet[] =>
  setsDone(state).filter(({ entered }) => entered === 'as-planned');
