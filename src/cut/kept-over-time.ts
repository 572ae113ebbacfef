import { Temporal } from 'temporal-polyfill';
import type { Past } from '../progression/past.ts';
import type { Mass } from '../training/mass.ts';
import { keptByLift, keptHeadline } from './kept.ts';
import { strengthTracks } from './strength-tracks.ts';

/** Where the cut stood on a day. */
export interface KeptOn {
  readonly date: Temporal.PlainDate;
  /** Median over the compound lifts; null while none is known. */
  readonly kept: number | null;
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
  const tracks = strengthTracks(past, cutFrom);
  return [...dates, today].map((date) => ({
    date,
    kept: keptHeadline(keptByLift(tracks, date, past.bodyMassOn)),
    body: past.bodyMassOn(date),
  }));
}
