import { type Filtered, LiftsFilter, type MeanAndVariance, type Observed } from './lifts-filter.ts';
import { HALF_OF_90, normalBelow } from './normal.ts';
import { fallOf, sessionValue, toldAgainstFailed } from './session-seen.ts';
import type { SetSeen } from './set-seen.ts';
import { SETTINGS, STRENGTH_MODEL } from './strength-model.ts';

/** One session of a lift, on a day counted from any origin. */
export interface SessionSeen {
  readonly day: number;
  readonly track: string;
  readonly sets: readonly SetSeen[];
}

/** A change with its error, in logarithms: `mean` 0 is all of it, −0.02 two percent less. */
export interface StrengthChange {
  readonly mean: number;
  /** Standard deviation. */
  readonly error: number;
}

/** A lift's strength now, and its change since the base day. */
export interface LiftEstimate {
  readonly change: StrengthChange;
  readonly level: StrengthChange;
  /** How much weaker each set is than the one before, in logarithms. */
  readonly fall: number;
}

/** What the results say of a lifter's lifts. */
export interface StrengthEstimate {
  readonly lifts: ReadonlyMap<string, LiftEstimate>;
  /** The mean change of these lifts: what food, sleep and age do to all of them. Null of none. */
  readonly together: (lifts: readonly string[]) => StrengthChange | null;
}

/**
 * Strength of each lift on the day `until`, and its change since `baseDay` (or since its first
 * session, where that is later), from sessions in order of day. Every setting of the model is tried
 * and weighed by the likelihood that the results of all lifts together give it. Later sessions must
 * be left out by the caller.
 */
export function estimateStrength(
  lifts: ReadonlyMap<string, readonly SessionSeen[]>,
  baseDay: number,
  until: number,
): StrengthEstimate {
  const falls = new Map(
    [...lifts].map(([lift, sessions]) => [lift, fallOf(sessions.map(({ sets }) => sets))]),
  );
  const sessions = inOrder(lifts, falls);
  let filters = SETTINGS.map((setting) => new LiftsFilter(sessions, setting, baseDay));
  sessions.forEach((session, at) => {
    for (const filter of filters) filter.take(session);
    if (at % SESSIONS_BETWEEN_SIEVES === SESSIONS_BETWEEN_SIEVES - 1) filters = sieved(filters);
  });
  const tried = filters.map((filter) => filter.at(until));
  const weights = weightsOf(tried);
  const mix = (of: (filtered: Filtered) => MeanAndVariance | undefined): StrengthChange =>
    mixed(tried.map((each, i) => ({ ...(of(each) ?? NOTHING), weight: weights[i] ?? 0 })));
  const known = [...new Set(sessions.map(({ lift }) => lift))];
  return {
    lifts: new Map(
      known.map((lift) => [
        lift,
        {
          change: withMore(
            mix((each) => each.lifts.get(lift)?.change),
            STRENGTH_MODEL.repeating,
          ),
          level: mix((each) => each.lifts.get(lift)?.level),
          fall: falls.get(lift) ?? STRENGTH_MODEL.fall,
        },
      ]),
    ),
    together: (wanted) => {
      const of = wanted.filter((lift) => known.includes(lift));
      if (of.length === 0) return null;
      return withMore(
        mix((each) => each.together(of)),
        STRENGTH_MODEL.repeatingTogether,
      );
    },
  };
}

/** Settings that the results have made a thousand times less likely than the best are not carried on: they only cost time. */
function sieved(filters: readonly LiftsFilter[]): LiftsFilter[] {
  const best = Math.max(...filters.map(({ logLikelihood }) => logLikelihood));
  return filters.filter(({ logLikelihood }) => logLikelihood > best - Math.log(1000));
}

const SESSIONS_BETWEEN_SIEVES = 12;

const NOTHING: MeanAndVariance = { mean: 0, variance: 0 };

function inOrder(
  lifts: ReadonlyMap<string, readonly SessionSeen[]>,
  falls: ReadonlyMap<string, number>,
): Observed[] {
  return [...lifts]
    .flatMap(([lift, sessions]) =>
      sessions.map(({ day, track, sets }) => ({
        day,
        lift,
        track,
        ...sessionValue(sets, falls.get(lift) ?? 0),
        toldMore: toldAgainstFailed(sets, falls.get(lift) ?? 0),
      })),
    )
    .sort((a, b) => a.day - b.day || (a.lift < b.lift ? -1 : 1));
}

function weightsOf(tried: readonly Filtered[]): number[] {
  const best = Math.max(...tried.map(({ logLikelihood }) => logLikelihood));
  const weights = tried.map(({ logLikelihood }) => Math.exp(logLikelihood - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

const withMore = ({ mean, error }: StrengthChange, more: number): StrengthChange => ({
  mean,
  error: Math.hypot(error, more),
});

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

interface Weighed extends MeanAndVariance {
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
