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

/** A session's sets as one value of a fresh set, and its variance. */
export function sessionValue(sets: readonly SetSeen[], fall: number) {
  const value = weighted(sets, (set) => set.value + fall * set.place);
  return { value, variance: 1 / sets.reduce((sum, set) => sum + weightOf(set), 0) };
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
