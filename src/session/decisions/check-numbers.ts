import type { PrescribedExercise } from '../../progression/prescription.ts';
import type { Problem } from '../../text/problem.ts';
import { kilograms, massText } from '../../training/mass.ts';
import type { SetNumbers } from '../events.ts';

/** More than these are a slip of the fingers. Ours. */
export const MOST = { reps: 60, seconds: 900, reserve: 10, load: kilograms(1000) } as const;

/** What is wrong with the numbers of a set, or null. */
export function numbersProblem(
  exercise: PrescribedExercise,
  { load, count, reserve }: SetNumbers,
): Problem | null {
  const { counts, basis } = exercise;
  // A set that was tried and did not come up has no reps: a miss, and worth knowing.
  if (!Number.isInteger(count) || count < 0 || count > MOST[counts]) {
    return {
      what: `A set cannot have ${count} ${counts}: expected a whole number from 0 to ${MOST[counts]}.`,
    };
  }
  if (reserve !== null && (!Number.isInteger(reserve) || reserve < 0 || reserve > MOST.reserve)) {
    return {
      what: `${reserve} is no number of reps in reserve: expected a whole number from 0 to ${MOST.reserve}.`,
    };
  }
  const lightest = basis === 'added' ? -MOST.load : 0;
  if (!Number.isSafeInteger(load) || load < lightest || load > MOST.load) {
    return {
      what: `The load of ${exercise.name} cannot be so.`,
      fix: `Type a load from ${lightest === 0 ? '0' : massText(-MOST.load as typeof load, 'kg')} to ${massText(MOST.load, 'kg')}.`,
    };
  }
  return null;
}
