import { bisector, bisectRight } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import type { Range } from '../program/program.ts';
import type { Past } from '../progression/past.ts';
import { median } from '../training/median.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { dayNumber } from './day-number.ts';
import type { Shown, StrengthTrack } from './strength-tracks.ts';

interface OfLift {
  readonly lift: string;
  readonly name: string;
  readonly kind: 'compound' | 'isolation';
  /** The lift's track with the most counted sessions. */
  readonly track: string;
  readonly range: Range;
  /** Counted sessions that tell. */
  readonly sessions: number;
}

/** How much of a lift's strength is still there. */
export type LiftKept = OfLift &
  (
    | { readonly state: 'not-yet' }
    /** A body weight lift, and no weigh-in: weigh in once. */
    | { readonly state: 'weigh-in-missing' }
    | {
        readonly state: 'known';
        /** Present ÷ earlier strength, 1 = all of it. */
        readonly share: number;
        /** Estimated one-repetition maxima, in micrograms of system load. */
        readonly then: number;
        readonly now: number;
        /** The latter ÷ body weight trend on that day; null before the first weigh-in. */
        readonly perBodyMass: number | null;
      }
  );

const byDay = bisector(({ day }: Shown) => day);

type Told = Shown & { readonly strength: number };

/**
 * Strength kept up to a day, a line for each lift trained in the 28 days before it: the best e1RM
 * of the track's last two counted sessions ÷ that of its first two.
 */
export function keptByLift(
  tracks: readonly StrengthTrack[],
  on: Temporal.PlainDate,
  bodyMassOn: Past['bodyMassOn'],
): LiftKept[] {
  const byLift = new Map<string, StrengthTrack[]>();
  for (const track of tracks) {
    const { lift } = track.exercise;
    byLift.set(lift, [...(byLift.get(lift) ?? []), track]);
  }
  return [...byLift.values()]
    .filter((ofLift) => ofLift.some((track) => isPresent(track, on)))
    .map((ofLift) => keptOf(ofLift, on, bodyMassOn));
}

/** The headline: median over the compound lifts, or null while none is known. */
export function keptHeadline(lifts: readonly LiftKept[]): number | null {
  return median(
    lifts.flatMap((lift) =>
      lift.kind === 'compound' && lift.state === 'known' ? [lift.share] : [],
    ),
  );
}

function isPresent({ trained }: StrengthTrack, on: Temporal.PlainDate): boolean {
  const last = trained[bisectRight(trained, dayNumber(on)) - 1];
  return last !== undefined && dayNumber(on) - last < CUT_LIMITS.presentDays;
}

function keptOf(
  ofLift: readonly StrengthTrack[],
  on: Temporal.PlainDate,
  bodyMassOn: Past['bodyMassOn'],
): LiftKept {
  const until = ofLift.map(({ exercise, sessions }) => ({
    exercise,
    counted: sessions.slice(0, byDay.right(sessions, dayNumber(on))),
  }));
  const { exercise, counted } = until.reduce((a, b) =>
    b.counted.length > a.counted.length ? b : a,
  );
  const told = counted.filter((each): each is Told => each.strength !== null);
  const { lift, name, kind, range, track } = exercise;
  const of: OfLift = { lift, name, kind, track, range, sessions: told.length };
  const last = told.at(-1);
  if (exercise.loading === 'bodyweight' && counted.length > 0 && bodyMassOn(on) === null) {
    return { ...of, state: 'weigh-in-missing' };
  }
  if (told.length < CUT_LIMITS.keptSessions || !last) return { ...of, state: 'not-yet' };
  const best = (some: readonly Told[]) => Math.max(...some.map(({ strength }) => strength));
  const [then, now] = [best(told.slice(0, 2)), best(told.slice(-2))];
  const body = bodyMassOn(last.date);
  const perBodyMass = body === null ? null : now / body;
  return { ...of, state: 'known', share: now / then, then, now, perBodyMass };
}
