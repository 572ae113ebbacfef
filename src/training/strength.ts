import { type Mass, plus, share } from './mass.ts';

/** How far the strength curve is trusted, in reps to failure. */
export const CURVE = {
  /** Brzycki up to here, the Epley line from here; both give 75 % at exactly 10. */
  joinedAt: 10,
  /** An estimate from more reps is not shown. */
  shownTo: 15,
  /** To here the curve serves comparisons and predictions; beyond, the line only goes on. */
  servesTo: 31,
} as const;

/**
 * The share of the one-repetition maximum that can be lifted `repsToFailure` times, a real number:
 * (37 − r) ÷ 36 up to 10 reps (Brzycki 1993; of six equations the most accurate there in the bench
 * press of 220 men, Mayhew 1995), 1 ÷ (1 + r/30) above (Epley 1985). One rep is the maximum itself;
 * under one rep, a load that could not be lifted, the share is above 1. Strictly falling.
 */
export function shareOfMax(repsToFailure: number): number {
  return repsToFailure <= CURVE.joinedAt ? (37 - repsToFailure) / 36 : 1 / (1 + repsToFailure / 30);
}

/** Estimated one-repetition maximum, in the unit of `load`. Reps to failure = reps + reps in reserve. */
export const oneRepMax = (load: number, repsToFailure: number): number =>
  load / shareOfMax(repsToFailure);

/** The reps to failure that `load` allows, a real number; the inverse of {@link oneRepMax}. Infinite at no load. */
export function repsToFailureAt(load: number, max: number): number {
  const share = load / max;
  return share >= shareOfMax(CURVE.joinedAt) ? 37 - 36 * share : 30 * (1 / share - 1);
}

/** The load that can be lifted `repsToFailure` times, in the unit of `max`. */
export const loadAtRepsToFailure = (max: number, repsToFailure: number): number =>
  max * shareOfMax(repsToFailure);

/** The load for `reps` with `reserve` more left. */
export const loadForReps = (max: number, reps: number, reserve: number): number =>
  loadAtRepsToFailure(max, reps + reserve);

/** {@link oneRepMax} where it may be shown: null above 15 reps to failure, or without a rep done. */
export function shownOneRepMax(load: number, repsToFailure: number): number | null {
  const isShown = repsToFailure >= 1 && repsToFailure <= CURVE.shownTo;
  return isShown ? oneRepMax(load, repsToFailure) : null;
}

/**
 * What is really lifted in a body weight lift: the body's share and the setting (added −
 * assistance). Null before the first weigh-in, when body mass is not known.
 */
export function systemLoad(setting: Mass, bodyMass: Mass | null, bodyShare: number): Mass | null {
  return bodyMass === null ? null : plus(share(bodyMass, bodyShare), setting);
}
