import type { Problem } from '../../text/problem.ts';
import type { SessionFact } from '../events.ts';
import type { ExerciseState, SessionState } from '../state.ts';

/** What becomes of a command: the facts to write, or the sentence why not. */
export type Decided =
  | { readonly ok: true; readonly facts: readonly SessionFact[] }
  | { readonly ok: false; readonly problem: Problem };

export const accepted = (...facts: readonly SessionFact[]): Decided => ({ ok: true, facts });

export const refused = (what: string, fix?: string): Decided => ({
  ok: false,
  problem: fix === undefined ? { what } : { what, fix },
});

/** Decides about an exercise of the session, or says that there is none. */
export function forExercise(
  state: SessionState,
  exercise: number,
  decideOn: (each: ExerciseState) => Decided,
): Decided {
  const each = state.exercises[exercise];
  const count = state.exercises.length;
  return each
    ? decideOn(each)
    : refused(`There is no exercise ${exercise + 1}: the session has ${count}.`);
}
