import { EFFORT } from '../training/effort.ts';
import { oneRepMax, shareOfMax } from '../training/strength.ts';
import { STRENGTH_MODEL } from './strength-model.ts';

/** One set as the estimate sees it. */
export interface SetSeen {
  /** Log of the estimated one-repetition maximum, in any unit that stays the same. */
  readonly value: number;
  /** Variance of what was told. */
  readonly variance: number;
  /** How much one rep told too much would raise the value; 0 where a rep was tried and failed. */
  readonly perToldRep: number;
  /** 0 for the first set of the exercise. */
  readonly place: number;
}

/** What a set tells of strength, before it is put into logarithms. */
export interface SetTold {
  /** What was really lifted, in any unit that stays the same; over 0. */
  readonly lifted: number;
  readonly reps: number;
  readonly reserve: number;
  /** The reserve was not told. */
  readonly assumed: boolean;
  /** The next rep was tried and failed. */
  readonly failed: boolean;
  readonly place: number;
}

/** Null where nothing can be read from it: no rep done, no load, or far from failure (over 5 in reserve). */
export function setSeen({
  lifted,
  reps,
  reserve,
  assumed,
  failed,
  place,
}: SetTold): SetSeen | null {
  if (!(lifted > 0) || reps <= 0 || reserve > EFFORT.trustedReserve) return null;
  const toFailure = reps + reserve;
  const { unratedReps, failedReps } = STRENGTH_MODEL;
  const told = assumed ? unratedReps : toldError(reserve);
  const error = failed ? failedReps : told;
  // How much a rep more or less changes the estimate, there on the curve.
  const perRep = Math.log(shareOfMax(toFailure - 0.5) / shareOfMax(toFailure + 0.5));
  return {
    value: Math.log(oneRepMax(lifted, toFailure)),
    variance: (error * perRep) ** 2,
    perToldRep: failed ? 0 : STRENGTH_MODEL.perToldRep,
    place,
  };
}

/** Standard deviation of a told reserve, in reps. */
export const toldError = (reserve: number): number =>
  Math.hypot(STRENGTH_MODEL.toldReps, STRENGTH_MODEL.toldRepsPerReserve * reserve);
