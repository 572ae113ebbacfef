import type { Result } from '../progression/past.ts';
import type { Estimate } from './sets-csv.ts';

/** One session of a lift, newest last, with its best e1RM in micrograms. */
export interface LiftRow {
  readonly result: Result;
  readonly best: number | null;
}

/** The sessions of a lift, by its key, in order; of every lift where none is named. */
export function liftRows(
  results: readonly Result[],
  lift: string | null,
  estimate: Estimate,
): LiftRow[] {
  return results
    .filter(({ exercise, sets }) => sets.length > 0 && (lift === null || exercise.lift === lift))
    .map((result) => ({ result, best: bestOf(result, estimate) }));
}

function bestOf(result: Result, estimate: Estimate): number | null {
  return result.sets.reduce<number | null>((best, set) => {
    const shown = estimate(result, set);
    return shown !== null && (best === null || shown > best) ? shown : best;
  }, null);
}
