import type { Temporal } from 'temporal-polyfill';
import type { Problem } from '../text/problem.ts';
import { daysBetween } from './cut-start.ts';

/** A reading that looks like a slip of the finger. The lifter is asked, never refused. */
export interface ReadingDoubt<Amount> {
  readonly problem: Problem;
  /** What was probably meant; null where nothing is near. */
  readonly meant: Amount | null;
}

/** The share by which a reading may differ from an earlier one: at once, more with each day since, and at most. */
export interface Nearness {
  readonly once: number;
  readonly aDay: number;
  readonly most: number;
}

/** @param ratio the later reading ÷ the earlier one, so many days before */
export const isNear = ({ once, aDay, most }: Nearness, ratio: number, days: number): boolean =>
  Math.abs(ratio - 1) <= Math.min(most, once + aDay * days);

/** Readings of days before, oldest first: one of the same morning may be the very slip that is put right. */
export const readingsBefore = <Reading extends { readonly date: Temporal.PlainDate }>(
  readings: readonly Reading[],
  date: Temporal.PlainDate,
): readonly Reading[] =>
  readings
    .filter((each) => daysBetween(each.date, date) > 0)
    .toSorted((one, other) => daysBetween(other.date, one.date));

/** What to do about a doubt, in the words for what was found and what was probably meant. */
export const doubtFix = (found: string, meant: string | null): string =>
  meant === null
    ? `Check the number, or say once more that ${found} is right.`
    : `Was it ${meant}? Enter that, or say once more that ${found} is right.`;
