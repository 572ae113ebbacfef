import { aimOf, type SetAim } from '../session/aim.ts';
import type { SetPlace } from '../session/events.ts';
import { plannedSets } from '../session/next-set.ts';
import type { ExerciseState, SessionState } from '../session/state.ts';

/** What a set asks for, and which of how many it is. */
export interface PlannedSet extends SetAim {
  /** How many sets of its role there are. */
  readonly of: number;
}

export function plannedSet(session: SessionState, place: SetPlace): PlannedSet | null {
  const exercise = session.exercises[place.exercise];
  const aim = aimOf(session, place);
  if (!exercise || !aim) return null;
  return { ...aim, of: setsOfRole(exercise, place.role) };
}

/** How many sets of a role an exercise has. */
export function setsOfRole(exercise: ExerciseState, role: SetPlace['role']): number {
  if (role === 'warm-up') return exercise.prescribed.warmUp.length;
  if (role === 'straight') return Math.max(plannedSets(exercise), exercise.done.length);
  return role === 'lead' ? 1 : plannedSets(exercise) - 1;
}

/** Is it the last set of an exercise in which it may go on until a rep fails? */
export const isTestSet = (exercise: ExerciseState, { role, index }: SetPlace): boolean =>
  exercise.prescribed.testSet === true &&
  role === 'straight' &&
  index === setsOfRole(exercise, role) - 1;

/** Said of such a set; null of any other. */
export const testSetWords = (exercise: ExerciseState, place: SetPlace): string | null =>
  isTestSet(exercise, place)
    ? 'The last one: on until a rep fails, if you like; then z says so.'
    : null;
