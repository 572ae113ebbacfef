import { keptOverTime } from '../cut/kept-over-time.ts';
import type { Review } from '../cut/review.ts';
import type { Past } from '../progression/past.ts';
import type { KeptPicture } from './page-view.ts';

/** Strength kept against weight lost, week by week; null before both are known, or where weight is not to be shown. */
export function pictureOfKept(past: Past, { body, evidence, today }: Review): KeptPicture | null {
  const atStart = body?.atStart;
  if (!evidence.cutFrom || !atStart) return null;
  const weeks = keptOverTime(past, evidence.cutFrom, today).flatMap(({ date, kept, body: mass }) =>
    kept === null || mass === null
      ? []
      : [{ date, kept: kept.share * 100, lost: (1 - mass / atStart) * 100 }],
  );
  if (weeks.length === 0) return null;
  return {
    points: weeks.map(({ kept, lost }) => [lost, kept]),
    table: {
      headings: ['day', 'weight lost, %', 'strength kept, %'],
      rows: weeks.map(({ date, kept, lost }) => [
        date.toString(),
        lost.toFixed(1),
        kept.toFixed(1),
      ]),
    },
  };
}
