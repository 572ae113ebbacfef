import { bestShown } from '../cut/shown-strength.ts';
import type { Past, Result } from '../progression/past.ts';

/** One session of a lift, with its best e1RM in micrograms. */
export interface LiftRow {
  readonly result: Result;
  readonly best: number | null;
}

/** The results of a lift, by its key, in the order given; of every lift where none is named. */
export function liftRows(
  results: readonly Result[],
  lift: string | null,
  bodyMassOn: Past['bodyMassOn'],
): LiftRow[] {
  return results
    .filter(({ exercise, sets }) => sets.length > 0 && (lift === null || exercise.lift === lift))
    .map((result) => ({ result, best: bestShown(result, bodyMassOn) }));
}
