import { filterLift, type SessionSeen } from './lift-filter.ts';
import { HALF_OF_90, normalBelow } from './normal.ts';
import { SETTINGS, STRENGTH_MODEL } from './strength-model.ts';

/** A change with its error, in logarithms: `mean` 0 is all of it, −0.02 two percent less. */
export interface StrengthChange {
  readonly mean: number;
  /** Standard deviation. */
  readonly error: number;
}

/** A lift's strength now, and its change since the base day. */
export interface LiftEstimate {
  readonly change: StrengthChange;
  /** The same from the results of this lift alone. */
  readonly alone: StrengthChange;
  readonly level: StrengthChange;
}

/**
 * Strength of each lift on the day `until`, and its change since `baseDay`, from sessions in order
 * of day. Every setting of the model is tried and weighed by the likelihood that the results of all
 * lifts together give it. Later sessions must be left out by the caller.
 */
export function estimateStrength(
  lifts: ReadonlyMap<string, readonly SessionSeen[]>,
  baseDay: number,
  until: number,
): ReadonlyMap<string, LiftEstimate> {
  const tried = SETTINGS.map((setting) => {
    const filters = new Map(
      [...lifts].map(([lift, sessions]) => [lift, filterLift(sessions, setting, baseDay, until)]),
    );
    let logLikelihood = 0;
    for (const filter of filters.values()) logLikelihood += filter?.logLikelihood ?? 0;
    return { filters, logLikelihood };
  });
  const best = Math.max(...tried.map(({ logLikelihood }) => logLikelihood));
  const weights = tried.map(({ logLikelihood }) => Math.exp(logLikelihood - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const found = new Map<string, Pick<LiftEstimate, 'change' | 'level'>>();
  for (const lift of lifts.keys()) {
    const filters = tried.flatMap(({ filters }, i) => {
      const filter = filters.get(lift);
      return filter ? [{ filter, weight: (weights[i] ?? 0) / total }] : [];
    });
    if (filters.length === 0) continue;
    const change = mixed(filters.map(({ filter, weight }) => ({ ...filter.change, weight })));
    const level = mixed(filters.map(({ filter, weight }) => ({ ...filter.level, weight })));
    found.set(lift, { change, level });
  }
  const changes = towardsEachOther(new Map([...found].map(([lift, { change }]) => [lift, change])));
  return new Map(
    [...found].map(([lift, { level, change }]) => [
      lift,
      { level, change: changes.get(lift) ?? change, alone: withRepeating(change) },
    ]),
  );
}

/**
 * What happens to one lift mostly happens to all: each change is drawn towards the mean of the
 * others as far as it is uncertain itself, and no nearer than lifts are known to keep together.
 */
function towardsEachOther(
  changes: ReadonlyMap<string, StrengthChange>,
): ReadonlyMap<string, StrengthChange> {
  const weights = [...changes].map(([lift, change]) => {
    const weight = 1 / (change.error ** 2 + STRENGTH_MODEL.apart ** 2);
    return { lift, weight, mean: change.mean };
  });
  return new Map(
    [...changes].map(([lift, own]) => {
      const others = weights.filter((each) => each.lift !== lift);
      const weight = others.reduce((sum, each) => sum + each.weight, 0);
      if (weight === 0) return [lift, withRepeating(own)];
      const mean = others.reduce((sum, each) => sum + each.weight * each.mean, 0) / weight;
      const around = STRENGTH_MODEL.apart ** 2 + 1 / weight;
      // A lift that goes its own way, far from the others, is let go.
      const { tails } = STRENGTH_MODEL;
      const far = (own.mean - mean) ** 2 / (around + own.error ** 2);
      const hold = Math.min(1, (tails + 1) / (tails + far));
      const [mine, theirs] = [1 / own.error ** 2, hold / around];
      return [
        lift,
        withRepeating({
          mean: (mine * own.mean + theirs * mean) / (mine + theirs),
          error: Math.sqrt(1 / (mine + theirs)),
        }),
      ];
    }),
  );
}

const withRepeating = ({ mean, error }: StrengthChange): StrengthChange => ({
  mean,
  error: Math.hypot(error, STRENGTH_MODEL.repeating),
});

/** The mean change of several lifts: what food, sleep and age do to all of them. */
export function changeTogether(changes: readonly StrengthChange[]): StrengthChange | null {
  const n = changes.length;
  if (n === 0) return null;
  const mean = changes.reduce((sum, change) => sum + change.mean, 0) / n;
  const variance = changes.reduce((sum, { error }) => sum + error ** 2, 0) / n ** 2;
  return { mean, error: Math.hypot(Math.sqrt(variance), STRENGTH_MODEL.repeatingTogether) };
}

/** The probability that more than `share` was lost. */
export function oddsOfLoss({ mean, error }: StrengthChange, share: number): number {
  return normalBelow((Math.log(1 - share) - mean) / error);
}

/** A change as a share of what it was, with the ends of the 90 % interval. */
export function sharesOf({ mean, error }: StrengthChange): {
  share: number;
  low: number;
  high: number;
} {
  const half = HALF_OF_90 * error;
  return { share: Math.exp(mean), low: Math.exp(mean - half), high: Math.exp(mean + half) };
}

interface Weighed {
  readonly mean: number;
  readonly variance: number;
  readonly weight: number;
}

/** Mean and standard deviation of a mixture. */
function mixed(parts: readonly Weighed[]): StrengthChange {
  const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
  const variance = parts.reduce(
    (sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2),
    0,
  );
  return { mean, error: Math.sqrt(variance) };
}
