import { oneRepMax, repsToFailureAt, shareOfMax } from '../training/strength.ts';
import { normalBelow } from './normal.ts';
import { toldError } from './set-seen.ts';
import { STRENGTH_MODEL } from './strength-model.ts';
import type { Estimated } from './variants.ts';

/** What a set asks for. */
export interface SetAsked {
  /** What is really lifted, in the unit of the estimate; over 0. */
  readonly lifted: number;
  readonly aim: number;
  /** Reps to be left. */
  readonly reserve: number;
  /** 0 for the first set of the exercise. */
  readonly place: number;
}

/** What a set is likely to bring. */
export interface SetExpected {
  /** The most likely reps that leave the reserve asked for, a real number. */
  readonly reps: number;
  /** The probability that the aim is reached with it, as its lifter tells reserve. */
  readonly odds: number;
}

/** What a set is likely to bring on a day of which that is expected: the log of a fresh set's one-repetition maximum. */
export function setExpected(
  session: Estimated,
  fall: number,
  { lifted, aim, reserve, place }: SetAsked,
): SetExpected {
  const mean = session.mean - fall * place;
  // Told in whole reps: half a rep under counts as the next.
  const asked = aim + reserve - 0.5;
  const perRep = Math.log(shareOfMax(asked) / shareOfMax(asked + 1));
  const spread = Math.hypot(session.error, STRENGTH_MODEL.setNoise, toldError(reserve) * perRep);
  return {
    reps: repsToFailureAt(lifted, Math.exp(mean)) - reserve,
    odds: normalBelow((mean - Math.log(oneRepMax(lifted, asked))) / spread),
  };
}
