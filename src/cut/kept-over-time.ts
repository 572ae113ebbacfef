import { Temporal } from 'temporal-polyfill';
import type { Past } from '../progression/past.ts';
import type { Mass } from '../training/mass.ts';
import { type Kept, keptTogetherOver } from './kept.ts';

/** Where the cut stood on a day. */
export interface KeptOn {
  readonly date: Temporal.PlainDate;
  /** Of the compound lifts together; null while none is known. */
  readonly kept: Kept | null;
  /** Trend; null before the first weigh-in. */
  readonly body: Mass | null;
}

/** Strength kept and body weight on every seventh day of the cut, and today. */
export function keptOverTime(
  past: Past,
  cutFrom: Temporal.PlainDate,
  today: Temporal.PlainDate,
): KeptOn[] {
  const dates: Temporal.PlainDate[] = [];
  for (
    let date = cutFrom;
    Temporal.PlainDate.compare(date, today) < 0;
    date = date.add({ days: 7 })
  ) {
    dates.push(date);
  }
  dates.push(today);
  const kept = keptTogetherOver(past, cutFrom, dates);
  return dates.map((date, at) => ({
    date,
    kept: kept[at] ?? null,
    body: past.bodyMassOn(date),
  }));
}
