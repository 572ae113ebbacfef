import type { Temporal } from 'temporal-polyfill';
import type { WaistReading } from '../journal/history.ts';
import { dayWords } from '../text/day-words.ts';
import type { Problem } from '../text/problem.ts';
import {
  type Length,
  type LengthUnit,
  lengthIn,
  lengthOf,
  lengthText,
} from '../training/length.ts';
import { daysBetween } from './cut-start.ts';

/** A waist reading that looks like a slip of the finger. The lifter is asked, never refused. */
export interface WaistDoubt {
  readonly problem: Problem;
  /** What was probably meant; null where nothing is near. */
  readonly meant: Length | null;
}

/** Hardly an adult has less or more. Ours, wide. */
const LIKELY = { least: lengthOf(50, 'cm'), most: lengthOf(170, 'cm') } as const;

/** A tape laid elsewhere differs by some; more than this at once, and by so much more with each day since, is asked about. Ours. */
const NEAR = 0.12;
const NEAR_A_DAY = 0.002;
const NEAR_MOST = 0.3;

/**
 * Asks about a reading that is far from the one of the latest day before (or, without one, from any
 * waist), with what was probably meant: 86 cm by who typed 86 in. Null for a likely reading.
 * `tape`: the unit that was typed.
 */
export function waistDoubt(
  length: Length,
  date: Temporal.PlainDate,
  earlier: readonly WaistReading[],
  tape: LengthUnit,
): WaistDoubt | null {
  const before = earlier
    .filter((each) => daysBetween(each.date, date) > 0)
    .toSorted((one, other) => daysBetween(other.date, one.date))
    .at(-1);
  const isLikely = (found: Length): boolean => {
    if (!before) return found >= LIKELY.least && found <= LIKELY.most;
    const allowed = NEAR + NEAR_A_DAY * daysBetween(before.date, date);
    return Math.abs(found / before.length - 1) <= Math.min(NEAR_MOST, allowed);
  };
  if (isLikely(length)) return null;
  const found = lengthText(length, tape);
  const amount = lengthIn(length, tape);
  const other = tape === 'cm' ? 'in' : 'cm';
  const slips: readonly (readonly [Length, LengthUnit])[] = [
    [lengthOf(amount, other), other],
    [lengthOf(amount / 10, tape), tape],
  ];
  const meant = slips.find(([slip]) => isLikely(slip));
  return {
    meant: meant?.[0] ?? null,
    problem: {
      what: before
        ? `A waist of ${found} is far from the ${lengthText(before.length, tape)} of ${dayWords(before.date)}.`
        : `A waist of ${found} is an unlikely one.`,
      fix: meant
        ? `Was it ${lengthText(...meant)}? Enter that, or say once more that ${found} is right.`
        : `Check the number, or say once more that ${found} is right.`,
    },
  };
}

/** Readings of the same day that cannot both be right; the one said last counts, in their place. */
export function waistsReplacedBy(
  length: Length,
  date: Temporal.PlainDate,
  earlier: readonly WaistReading[],
): readonly WaistReading[] {
  return earlier.filter(
    (each) => each.date.equals(date) && Math.abs(length / each.length - 1) > NEAR,
  );
}
