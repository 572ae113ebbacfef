import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import { type Estimated, oddsOfLoss, sharesOf } from '../strength/strength-change.ts';
import type { Bout } from './bout.ts';
import { type Strengths, strengthOfLifts, tells } from './lift-strength.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';

/** A loss that is hardly luck. */
export interface Slip {
  /** The most likely loss of the last eight weeks, as a share. */
  readonly by: number;
  /** The probability that more than {@link LIMITS.slip} was lost. */
  readonly odds: number;
}

/** Sessions that tell about strength: not the first ones, not after a layoff, none with pain. */
export function countedBouts(bouts: readonly Bout[]): readonly Bout[] {
  return bouts.filter(({ result, pains }) => pains === 0 && tells(result));
}

/**
 * Is the lift slipping: has it lost more than 2 % within 56 days, with a probability of 93 %?
 * (Ours.) Null where it is not, or with fewer than four sessions that tell.
 */
export function slipOf(past: Past, lift: string, on: Temporal.PlainDate): Slip | null {
  const found = recentStrength(past, on).lifts.get(lift);
  return found && found.sessions >= LIMITS.slipSessions ? slipIn(found.change) : null;
}

/** The same of several lifts together, which is told sooner than of any one: null under three that are known. */
export function slipTogether(
  past: Past,
  lifts: ReadonlySet<string>,
  on: Temporal.PlainDate,
): Slip | null {
  const strengths = recentStrength(past, on);
  const known = [...strengths.lifts].flatMap(([lift, { sessions }]) =>
    lifts.has(lift) && sessions >= LIMITS.slipSessions ? [lift] : [],
  );
  const change = known.length >= LIMITS.liftsTogether ? strengths.together(known) : null;
  return change && slipIn(change);
}

/** The program's compound lifts, by key. */
export const compoundsOf = ({ days }: Pick<Program, 'days'>): ReadonlySet<string> =>
  new Set(
    days.flatMap(({ exercises }) =>
      exercises.flatMap(({ lift }) => (lift.kind === 'compound' ? [lift.key] : [])),
    ),
  );

function slipIn(change: Estimated): Slip | null {
  const odds = oddsOfLoss(change, LIMITS.slip);
  return odds < LIMITS.slipOdds ? null : { by: 1 - sharesOf(change).share, odds };
}

/** Strength of today, and its change in the eight weeks before. */
export const recentStrength = (past: Past, on: Temporal.PlainDate): Strengths =>
  strengthOfLifts(past, on.subtract({ days: LIMITS.slipDays }), on);
