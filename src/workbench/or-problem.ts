import { type Problem, Refusal } from '../text/problem.ts';

/** What `act` gives, or the problem where it is refused. Any other error is a bug and goes on. */
export function orProblem<T>(act: () => T): T | Problem {
  try {
    return act();
  } catch (error) {
    if (error instanceof Refusal) return error.problems[0] ?? { what: error.message };
    throw error;
  }
}
