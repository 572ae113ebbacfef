import { Temporal } from 'temporal-polyfill';
import { type Strengths, strengthOfLifts, strengthsOver } from '../progression/lift-strength.ts';
import type { DoneExercise, Past } from '../progression/past.ts';
import { sharesOf } from '../strength/strength-change.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';

/** Present ÷ earlier strength, 1 = all of it, with the ends of its 90 % interval. */
export interface Kept {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

interface OfLift {
  readonly lift: string;
  readonly name: string;
  readonly kind: 'compound' | 'isolation';
  /** Counted sessions that tell. */
  readonly sessions: number;
}

interface Known extends OfLift, Kept {
  readonly state: 'known';
  /** Estimated one-repetition maxima, in micrograms of system load. */
  readonly then: number;
  readonly now: number;
  /** The latter ÷ body weight trend on that day; null before the first weigh-in. */
  readonly perBodyMass: number | null;
}

/** How much of a lift's strength is still there. */
export type LiftKept =
  | Known
  | (OfLift & {
      /** `weigh-in-missing`: a body weight lift, and no weigh-in: weigh in once. */
      readonly state: 'not-yet' | 'weigh-in-missing';
    });

/**
 * Strength kept since the cut began, a line for each lift trained in the 28 days before `on`, from
 * results up to that day. Timed holds have no one-repetition maximum and are left out.
 */
export function keptByLift(
  past: Past,
  cutFrom: Temporal.PlainDate,
  on: Temporal.PlainDate,
): LiftKept[] {
  return keptIn(strengthOfLifts(past, cutFrom, on), past, cutFrom, on);
}

function keptIn(
  { lifts: strengths }: Strengths,
  past: Past,
  cutFrom: Temporal.PlainDate,
  on: Temporal.PlainDate,
): LiftKept[] {
  const exercises = presentLifts(past, cutFrom, on);
  // Before the cut has begun there is no strength of its beginning.
  const isBegun = daysBetween(cutFrom, on) >= 0;
  return [...exercises.values()].map((exercise): LiftKept => {
    const { lift, name, kind, loading } = exercise;
    const strength = strengths.get(lift);
    const of = { lift, name, kind, sessions: strength?.sessions ?? 0 };
    const body = past.bodyMassOn(on);
    if (loading === 'bodyweight' && body === null) return { ...of, state: 'weigh-in-missing' };
    if (!strength || strength.sessions < CUT_LIMITS.keptSessions || !isBegun)
      return { ...of, state: 'not-yet' };
    const { change, level } = strength;
    const now = Math.exp(level.mean);
    const then = Math.exp(level.mean - change.mean);
    const perBodyMass = body === null ? null : now / body;
    return { ...of, state: 'known', ...sharesOf(change), then, now, perBodyMass };
  });
}

/** The headline: all compound lifts together, or null while none is known. */
export function keptTogether(
  past: Past,
  cutFrom: Temporal.PlainDate,
  on: Temporal.PlainDate,
): Kept | null {
  return togetherIn(strengthOfLifts(past, cutFrom, on), past, cutFrom, on);
}

/** {@link keptTogether} on each of these days, in their order. */
export const keptTogetherOver = (
  past: Past,
  cutFrom: Temporal.PlainDate,
  dates: readonly Temporal.PlainDate[],
): (Kept | null)[] =>
  strengthsOver(past, cutFrom, dates, (strengths, on) => togetherIn(strengths, past, cutFrom, on));

function togetherIn(
  strengths: Strengths,
  past: Past,
  cutFrom: Temporal.PlainDate,
  on: Temporal.PlainDate,
): Kept | null {
  const compounds = keptIn(strengths, past, cutFrom, on).flatMap(({ lift, kind, state }) =>
    kind === 'compound' && state === 'known' ? [lift] : [],
  );
  const change = strengths.together(compounds);
  return change && sharesOf(change);
}

function presentLifts(
  past: Past,
  cutFrom: Temporal.PlainDate,
  on: Temporal.PlainDate,
): ReadonlyMap<string, DoneExercise> {
  const since = cutFrom.subtract({ days: CUT_LIMITS.daysBefore });
  const present = new Map<string, { exercise: DoneExercise; date: Temporal.PlainDate }>();
  for (const { exercise, date, sets } of past.results) {
    if (exercise.counts !== 'reps' || sets.length === 0) continue;
    if (Temporal.PlainDate.compare(date, since) < 0) continue;
    if (Temporal.PlainDate.compare(date, on) > 0) continue;
    present.set(exercise.lift, { exercise, date });
  }
  return new Map(
    [...present].flatMap(([lift, { exercise, date }]) =>
      daysBetween(date, on) < CUT_LIMITS.presentDays ? [[lift, exercise] as const] : [],
    ),
  );
}
