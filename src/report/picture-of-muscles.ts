import { CUT_LIMITS } from '../cut/cut-limits.ts';
import type { Review } from '../cut/review.ts';
import { muscleWords } from '../cut/verdict-words.ts';
import { dayAndMonth } from '../text/day-words.ts';
import type { MusclePicture } from './page-view.ts';

/** Hard sets a week of every muscle trained; null before the first. */
export function pictureOfMuscles({ weeks, muscles }: Review): MusclePicture | null {
  if (muscles.length === 0) return null;
  const rows = muscles.map((muscle) => ({
    name: capital(muscleWords(muscle)),
    sets: weeks.map(({ hardSets }) => Math.round((hardSets.get(muscle) ?? 0) * 100) / 100),
  }));
  return {
    weeks: weeks.map(({ from }) => dayAndMonth(from)),
    band: CUT_LIMITS.weeklySets,
    muscles: rows,
    table: {
      headings: ['week from', ...rows.map(({ name }) => name)],
      rows: weeks.map(({ from }, at) => [
        from.toString(),
        ...rows.map(({ sets }) => String(sets[at])),
      ]),
    },
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
