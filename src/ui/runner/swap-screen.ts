import { type Acting, type Outcome, show, tell } from '../outcome.ts';

export const NO_EXERCISE = 'Every exercise is done.';

/** The lifts that may stand in for an exercise. */
export function swapScreen(acting: Acting, exercise: number): Outcome {
  const state = acting.model.session?.exercises[exercise];
  if (!state) return tell(acting, NO_EXERCISE);
  const lifts = acting.coach.alternatives(state.prescribed);
  return show(acting, { kind: 'swap', exercise, lifts, chosen: 0, back: acting.screen });
}
