import type { SetPlace } from './events.ts';
import type { DoneSet, ExerciseState, LiftWork, SessionState } from './state.ts';

/** The set that comes next, or null when every set is done or left out. */
export function nextSet(
  state: Pick<SessionState, 'exercises' | 'chosen' | 'goesFirst' | 'pairs'>,
): SetPlace | null {
  const { exercises, chosen, goesFirst } = state;
  const first = chosen !== null && exercises[chosen] && !isOver(exercises[chosen]) ? chosen : null;
  const due = first ?? exercises.findIndex((each) => !isOver(each));
  // The one that was chosen goes first; then the sets alternate again.
  const exercise = due < 0 || due === goesFirst ? due : turnOf(state, due);
  const found = exercises[exercise];
  return found ? { exercise, ...placeWithin(found) } : null;
}

/** The exercises whose sets alternate with those of this one and that have sets left. */
export function partnersOf(
  { pairs, exercises }: Pick<SessionState, 'pairs' | 'exercises'>,
  exercise: number,
): readonly number[] {
  const pair = pairs.find((each) => each.includes(exercise)) ?? [];
  return pair.filter((each) => each !== exercise && exercises[each] && !isOver(exercises[each]));
}

/**
 * Which of a pair goes next, where `exercise` has its turn: a cluster to its end, then warm-ups,
 * one lift after the other, then whichever has fewer sets behind it, or rests longer.
 */
export function turnOf(state: Pick<SessionState, 'pairs' | 'exercises'>, exercise: number): number {
  const { exercises } = state;
  const all = [exercise, ...partnersOf(state, exercise)];
  const stateAt = (at: number): ExerciseState => exercises[at] as ExerciseState;
  const running = all.find((at) => isCluster(stateAt(at)) && stateAt(at).done.length > 0);
  const cold = all.find((at) => hasWarmUps(stateAt(at)));
  const [fewest] = all.toSorted(
    (a, b) =>
      roundsOf(stateAt(a)) - roundsOf(stateAt(b)) || lastAt(stateAt(a)) - lastAt(stateAt(b)),
  );
  return running ?? cold ?? fewest ?? exercise;
}

/** When its last set was put down; 0 before it. */
const lastAt = ({ done }: ExerciseState): number => done.at(-1)?.at.wall ?? 0;

const roundsOf = (exercise: ExerciseState): number =>
  worksOf(exercise).reduce((sum, work) => sum + setsCounted(work), 0);

const hasWarmUps = ({ done, skipped, warmUpsSkipped, warmUpsDone, prescribed }: ExerciseState) =>
  done.length + skipped === 0 && !warmUpsSkipped && warmUpsDone < prescribed.warmUp.length;

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
  const { prescribed, added } = exercise;
  return prescribed.minis ? prescribed.minis.mostSets : setsOfLift(exercise) + added;
}

/** Straight sets that are asked of the lift as it is now: of those planned, what it was not done for as another lift. */
export const setsOfLift = (exercise: ExerciseState): number =>
  Math.max(1, exercise.prescribed.sets.length - setsBefore(exercise));

/** Sets of the exercise that were done or skipped as another lift. */
export const setsBefore = ({ earlier }: ExerciseState): number =>
  earlier.reduce((sum, work) => sum + setsCounted(work), 0);

/** As {@link plannedSets}, a cluster counted as one. */
export const setsAskedOf = (exercise: ExerciseState): number =>
  isCluster(exercise) ? 1 : plannedSets(exercise);

/** Work sets done and skipped; a cluster counts as one. */
export const setsCounted = (work: LiftWork): number =>
  isCluster(work) ? Math.min(1, work.done.length) : work.done.length + work.skipped;

export const isCluster = ({ prescribed }: LiftWork): boolean => prescribed.minis !== null;

function placeWithin(exercise: ExerciseState): Omit<SetPlace, 'exercise'> {
  const { done, skipped, warmUpsDone } = exercise;
  if (hasWarmUps(exercise)) return { role: 'warm-up', index: warmUpsDone };
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
