import type { SetSeen } from './set-seen.ts';
import { STRENGTH_MODEL } from './strength-model.ts';

/**
 * How much weaker each set of a lift is than the one before, in logarithms: least squares over the
 * neighbours within sessions, drawn to what is usual as far as they leave it open.
 */
export function fallOf(sessions: readonly (readonly SetSeen[])[]): number {
  const { fall, fallSpread } = STRENGTH_MODEL;
  let [weight, sum] = [1 / fallSpread ** 2, fall / fallSpread ** 2];
  for (const sets of sessions) {
    const centre = weighted(sets, ({ place }) => place);
    for (const { place, value, variance } of sets) {
      const error = variance + STRENGTH_MODEL.setNoise ** 2;
      weight += (place - centre) ** 2 / error;
      sum -= ((place - centre) * value) / error;
    }
  }
  return sum / weight;
}

/** A session's sets as one value of a fresh set. */
export interface SessionValue {
  /** Log of the one-repetition maximum that its sets give, in any unit that stays the same. */
  readonly value: number;
  /** Variance of what was told. */
  readonly variance: number;
  /** How much one rep told too much would raise the value. */
  readonly perToldRep: number;
}

export function sessionValue(sets: readonly SetSeen[], fall: number): SessionValue {
  return {
    value: weighted(sets, (set) => set.value + fall * set.place),
    variance: 1 / sets.reduce((sum, set) => sum + weightOf(set), 0),
    perToldRep: weighted(sets, (set) => set.perToldRep),
  };
}

/**
 * What sets whose reserve was told say more than those of the same session that ended with a failed
 * rep: the luck of the day is the same for both, so only the telling differs. Null without both.
 */
export function toldAgainstFailed(sets: readonly SetSeen[], fall: number): SessionValue | null {
  const told = sets.filter(({ perToldRep }) => perToldRep > 0);
  const failed = sets.filter(({ perToldRep }) => perToldRep === 0);
  if (told.length === 0 || failed.length === 0) return null;
  const [a, b] = [sessionValue(told, fall), sessionValue(failed, fall)];
  return {
    value: a.value - b.value,
    variance: a.variance + b.variance,
    perToldRep: a.perToldRep,
  };
}

const weightOf = ({ variance }: SetSeen): number => 1 / (variance + STRENGTH_MODEL.setNoise ** 2);

function weighted(sets: readonly SetSeen[], of: (set: SetSeen) => number): number {
  let [sum, weight] = [0, 0];
  for (const set of sets) {
    sum += weightOf(set) * of(set);
    weight += weightOf(set);
  }
  return sum / weight;
}
