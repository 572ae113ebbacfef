import { LiftsFilter, type Observed } from './lifts-filter.ts';
import { HALF_OF_90, normalBelow } from './normal.ts';
import { fallOf, sessionValue, toldAgainstFailed } from './session-seen.ts';
import type { SetSeen } from './set-seen.ts';
import { SETTINGS, STRENGTH_MODEL } from './strength-model.ts';
import type { Estimated } from './variants.ts';

export type { Estimated };

/** One session of a lift, on a day counted from any origin. */
export interface SessionSeen {
  readonly day: number;
  readonly track: string;
  readonly sets: readonly SetSeen[];
}

/** A lift's strength now, and its change since the base day. */
export interface LiftEstimate {
  readonly change: Estimated;
  readonly level: Estimated;
  /** How much weaker each set is than the one before, in logarithms. */
  readonly fall: number;
}

/** What the results say of a lifter's lifts. */
export interface StrengthEstimate {
  readonly lifts: ReadonlyMap<string, LiftEstimate>;
  /** The mean change of these lifts: what food, sleep and age do to all of them. Null of none. */
  readonly together: (lifts: readonly string[]) => Estimated | null;
  /** The log of a fresh set's one-repetition maximum that a session of this track would tell now. Null of a lift not known. */
  readonly session: (lift: string, track: string) => Estimated | null;
}

/**
 * Strength of each lift on the day `until`, and its change since `baseDay` (or since its first
 * session, where that is later), from sessions in order of day up to `until`. Every setting of the
 * model is tried and weighed by the likelihood that the results of all lifts together give it.
 */
export function estimateStrength(
  lifts: ReadonlyMap<string, readonly SessionSeen[]>,
  baseDay: number,
  until: number,
): StrengthEstimate {
  const [found] = estimateStrengthOver(lifts, baseDay, [until], (estimate) => estimate);
  if (!found) throw new Error('One day was asked for.');
  return found;
}

/**
 * The same on each of these days, in their order, in one pass: of each what the sessions up to it
 * say; only the fall from set to set is learned from all of them. An estimate holds while it is read.
 */
export function estimateStrengthOver<Read>(
  lifts: ReadonlyMap<string, readonly SessionSeen[]>,
  baseDay: number,
  days: readonly number[],
  read: (estimate: StrengthEstimate, day: number) => Read,
): Read[] {
  const falls = fallsOf(lifts);
  const filter = new LiftsFilter(inOrder(lifts, falls), SETTINGS, baseDay);
  return days.map((day) => {
    const { lifts: begun, level, change, session } = filter.at(day);
    const estimate: StrengthEstimate = {
      lifts: new Map(
        begun.map((lift) => [
          lift,
          {
            change: withMore(change([lift]), STRENGTH_MODEL.repeating),
            level: level(lift),
            fall: falls.get(lift) ?? STRENGTH_MODEL.fall,
          },
        ]),
      ),
      together: (wanted) => {
        const of = wanted.filter((lift) => begun.includes(lift));
        return of.length === 0 ? null : withMore(change(of), STRENGTH_MODEL.repeatingTogether);
      },
      session: (lift, track) => (begun.includes(lift) ? session(lift, track) : null),
    };
    return read(estimate, day);
  });
}

/**
 * Strength of lifts on days, in one pass: of each what the sessions up to its day say. Asked in
 * order of day; null before a lift's first session.
 */
export function levelsOver(
  lifts: ReadonlyMap<string, readonly SessionSeen[]>,
  asked: readonly { readonly lift: string; readonly day: number }[],
): (Estimated | null)[] {
  const filter = new LiftsFilter(
    inOrder(lifts, fallsOf(lifts)),
    SETTINGS,
    Number.POSITIVE_INFINITY,
  );
  return asked.map(({ lift, day }) => {
    const { lifts: begun, level } = filter.at(day);
    return begun.includes(lift) ? level(lift) : null;
  });
}

const fallsOf = (lifts: ReadonlyMap<string, readonly SessionSeen[]>): Map<string, number> =>
  new Map([...lifts].map(([lift, sessions]) => [lift, fallOf(sessions.map(({ sets }) => sets))]));

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

const withMore = ({ mean, error }: Estimated, more: number): Estimated => ({
  mean,
  error: Math.hypot(error, more),
});

/** The probability that more than `share` was lost. */
export function oddsOfLoss({ mean, error }: Estimated, share: number): number {
  return normalBelow((Math.log(1 - share) - mean) / error);
}

/** A change as a share of what it was, with the ends of the 90 % interval. */
export function sharesOf({ mean, error }: Estimated): {
  share: number;
  low: number;
  high: number;
} {
  const half = HALF_OF_90 * error;
  return { share: Math.exp(mean), low: Math.exp(mean - half), high: Math.exp(mean + half) };
}
