import type { Temporal } from 'temporal-polyfill';
import type { Mass } from '../training/mass.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { daysBetween } from './cut-start.ts';

/** Where body weight should be on a day at the planned rates of loss. */
export interface BandOn {
  readonly date: Temporal.PlainDate;
  /** Micrograms. */
  readonly low: number;
  readonly high: number;
}

/**
 * The planned rate of loss, in percent a week, as a range of body weight: from the trend after the
 * first week of the cut, whose water says nothing, to today. Empty before that, or without a trend.
 */
export function weightBand(
  cutFrom: Temporal.PlainDate,
  today: Temporal.PlainDate,
  [slow, fast]: readonly [number, number],
  bodyMassOn: (date: Temporal.PlainDate) => Mass | null,
): BandOn[] {
  const from = cutFrom.add({ days: CUT_LIMITS.waterDays });
  const start = bodyMassOn(from);
  const days = daysBetween(from, today);
  if (start === null || days < 1) return [];
  const after = (percent: number, passed: number) => start * (1 - percent / 100) ** (passed / 7);
  const steps = [...Array(Math.ceil(days / 7)).keys()].map((week) => week * 7);
  return [...steps, days].map((passed) => ({
    date: from.add({ days: passed }),
    low: after(fast, passed),
    high: after(slow, passed),
  }));
}
