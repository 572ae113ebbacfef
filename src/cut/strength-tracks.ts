import { Temporal } from 'temporal-polyfill';
import { boutsOf } from '../progression/bout.ts';
import type { Past } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { countedBouts, strengthOf } from '../progression/slipping.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { dayNumber } from './day-number.ts';

/** Strength shown in one counted session. */
export interface Shown {
  readonly date: Temporal.PlainDate;
  /** {@link dayNumber} of the date. */
  readonly day: number;
  /** e1RM in micrograms of system load; null where no set tells. */
  readonly strength: number | null;
}

/** A track and its counted sessions in and shortly before a cut. */
export interface StrengthTrack {
  /** As prescribed last. */
  readonly exercise: PrescribedExercise;
  readonly sessions: readonly Shown[];
  /** Day numbers of all its sessions, counted or not, in order. */
  readonly trained: readonly number[];
}

/**
 * The tracks that strength kept is told from: sessions of the cut, and of the 28 days before it the
 * two nearest. Sessions marked `start`, `return`, lighter or pain do not count; timed holds have no
 * e1RM and are left out.
 */
export function strengthTracks(past: Past, cutFrom: Temporal.PlainDate): StrengthTrack[] {
  const since = cutFrom.subtract({ days: CUT_LIMITS.daysBefore });
  const results = past.results.filter(
    ({ date, exercise }) =>
      exercise.counts === 'reps' && Temporal.PlainDate.compare(date, since) >= 0,
  );
  const byTrack = new Map<string, typeof results>();
  for (const result of results) {
    const of = byTrack.get(result.exercise.track);
    if (of) of.push(result);
    else byTrack.set(result.exercise.track, [result]);
  }
  return [...byTrack].flatMap(([track, of]) => {
    const exercise = of.at(-1)?.exercise;
    if (!exercise) return [];
    const sessions = countedBouts(boutsOf({ ...past, results: of }, track)).map((bout) => ({
      date: bout.result.date,
      day: dayNumber(bout.result.date),
      strength: strengthOf(bout, past.bodyMassOn),
    }));
    const first = sessions.findIndex(({ date }) => Temporal.PlainDate.compare(date, cutFrom) >= 0);
    const from = Math.max(0, (first < 0 ? sessions.length : first) - 2);
    return [
      { exercise, sessions: sessions.slice(from), trained: of.map(({ date }) => dayNumber(date)) },
    ];
  });
}
