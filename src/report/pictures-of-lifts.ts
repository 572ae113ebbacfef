import { CUT_LIMITS } from '../cut/cut-limits.ts';
import type { Review } from '../cut/review.ts';
import type { Past } from '../progression/past.ts';
import { safeText } from '../text/safe-text.ts';
import { dayNumber } from '../training/day-number.ts';
import { type Mass, massNumber, type Unit } from '../training/mass.ts';
import { countsText, e1rmPoints, loadsText } from './history-text.ts';
import { type LiftRow, liftRows } from './lift-rows.ts';
import type { LiftPicture } from './page-view.ts';
import { keptWords } from './review-words.ts';

/** e1RM of every lift trained in the last four weeks, those of the program first and in its order. */
export function picturesOfLifts(
  { results, bodyMassOn }: Pick<Past, 'results' | 'bodyMassOn'>,
  { evidence, today }: Review,
  unit: Unit,
): LiftPicture[] {
  const since = dayNumber(today) - CUT_LIMITS.presentDays;
  const lately = new Set(
    results.filter(({ date }) => dayNumber(date) > since).map(({ exercise }) => exercise.lift),
  );
  const inProgram = evidence.program.days.flatMap(({ exercises }) =>
    exercises.map(({ lift }) => lift.key).filter((key) => lately.has(key)),
  );
  return [...new Set([...inProgram, ...lately])].flatMap((key) => {
    const rows = liftRows(results, key, bodyMassOn);
    const points = e1rmPoints(rows, unit);
    const name = rows.at(-1)?.result.exercise.name;
    if (name === undefined || points.length === 0) return [];
    const kept = evidence.lifts.find(({ lift }) => lift === key);
    const note = kept?.state === 'known' ? `${keptWords(kept, evidence.weightAdvice)} kept` : '';
    return [{ name: safeText(name), points, note, table: tableOf(rows, unit) }];
  });
}

const tableOf = (rows: readonly LiftRow[], unit: Unit): LiftPicture['table'] => ({
  headings: ['day', 'load', 'done', `e1RM, ${unit}`],
  rows: rows.map(({ result, best }) => [
    result.date.toString(),
    loadsText(result, unit),
    countsText(result),
    best === null ? '' : massNumber(Math.round(best) as Mass, unit, 1),
  ]),
});
