import type { DoneSet, ExerciseState, LiftWork, SessionState } from './state.ts';

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
