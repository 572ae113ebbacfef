import { Temporal } from 'temporal-polyfill';
import type { LiftRow } from './lift-rows.ts';

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
export function liftSummaries(rows: readonly LiftRow[]): LiftSummary[] {
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
