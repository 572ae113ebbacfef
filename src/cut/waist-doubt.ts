import type { Temporal } from 'temporal-polyfill';
import type { WaistReading } from '../journal/history.ts';
import { dayWords } from '../text/day-words.ts';
import {
  type Length,
  type LengthUnit,
  lengthIn,
  lengthOf,
  lengthText,
} from '../training/length.ts';
import { daysBetween } from './cut-start.ts';
import {
  doubtFix,
  isNear,
  type Nearness,
  type ReadingDoubt,
  readingsBefore,
} from './reading-doubt.ts';

/** Hardly an adult has less or more. Ours, wide. */
const LIKELY = { least: lengthOf(50, 'cm'), most: lengthOf(170, 'cm') } as const;

/** A tape laid elsewhere differs by some. Ours. */
const NEAR: Nearness = { once: 0.12, aDay: 0.002, most: 0.3 };

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
): ReadingDoubt<Length> | null {
  const before = readingsBefore(earlier, date).at(-1);
  const isLikely = (found: Length): boolean =>
    before
      ? isNear(NEAR, found / before.length, daysBetween(before.date, date))
      : found >= LIKELY.least && found <= LIKELY.most;
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
      fix: doubtFix(found, meant ? lengthText(...meant) : null),
    },
  };
}

/** Readings of the same day that cannot both be right; the one said last counts, in their place. */
export function waistsReplacedBy(
  length: Length,
  date: Temporal.PlainDate,
  earlier: readonly WaistReading[],
): readonly WaistReading[] {
  return earlier.filter((each) => each.date.equals(date) && !isNear(NEAR, length / each.length, 0));
}
