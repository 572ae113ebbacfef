import { Temporal } from 'temporal-polyfill';
import { bestShown } from '../cut/shown-strength.ts';
import type { Past, Result } from '../progression/past.ts';

/** One session of a lift, with its best e1RM in micrograms. */
export interface LiftSession {
  readonly result: Result;
  readonly best: number | null;
}

/** The results of a lift, by its key, in the order given; of every lift where none is named. */
export function liftRows(
  results: readonly Result[],
  lift: string | null,
  bodyMassOn: Past['bodyMassOn'],
): LiftSession[] {
  return results
    .filter(({ exercise, sets }) => sets.length > 0 && (lift === null || exercise.lift === lift))
    .map((result) => ({ result, best: bestShown(result, bodyMassOn) }));
}

/** A lift with results, in a line. */
export interface LiftSummary {
  readonly lift: string;
  readonly name: string;
  readonly sessions: number;
  readonly last: Temporal.PlainDate;
  /** Best e1RM of all, in micrograms; null where none tells. */
  readonly best: number | null;
}

/** The lifts of results in order of date, those done last first. */
export function liftSummaries(rows: readonly LiftSession[]): LiftSummary[] {
  const byLift = new Map<string, LiftSummary>();
  for (const { result, best } of rows) {
    const { lift, name } = result.exercise;
    const before = byLift.get(lift);
    byLift.set(lift, {
      lift,
      name,
      sessions: (before?.sessions ?? 0) + 1,
      last: result.date,
      best: best === null ? (before?.best ?? null) : Math.max(best, before?.best ?? 0),
    });
  }
  return [...byLift.values()].sort((a, b) => Temporal.PlainDate.compare(b.last, a.last));
}

/**
 * The results that every word of `query` fits: lift, program, day, date (`2026-11` for a month) or a
 * note of the session, upper and lower case alike. All of them for an empty query.
 */
export function searchHistory(
  results: readonly Result[],
  query: string,
  notesOf: (session: string) => readonly string[],
): Result[] {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [...results];
  return results.filter(({ exercise, program, day, date, session }) => {
    const texts = [exercise.lift, exercise.name, program, `day ${day}`, ...notesOf(session)];
    const found = texts.join('\n').toLowerCase();
    return words.every((word) => date.toString().startsWith(word) || found.includes(word));
  });
}
