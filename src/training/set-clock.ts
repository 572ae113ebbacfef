import { median } from './median.ts';

/** How long things take, in seconds. */
export const CLOCK = {
  /** Marshall 2012. */
  rep: 3,
  /** Common practice. */
  betweenExercises: 60,
  warmUpSet: 60,
  /** From so many sessions on the lifter's own pace counts. Ours. */
  sessionsForOwnPace: 5,
} as const;

/** What the clock needs to know of an exercise. */
export interface ClockedExercise {
  readonly counts: 'reps' | 'seconds';
  /** Reps (or seconds) of each set; of a cluster the lead set's and the mini-sets'. */
  readonly sets: readonly number[];
  /** Seconds between sets. */
  readonly rest: { readonly from: number; readonly to: number };
  /** Each set is done once with either side. */
  readonly perSide: boolean;
  readonly warmUps: number;
}

/** Seconds that a set is under way. */
export function setSeconds(
  count: number,
  { counts, perSide }: Pick<ClockedExercise, 'counts' | 'perSide'>,
): number {
  return count * (counts === 'reps' ? CLOCK.rep : 1) * (perSide ? 2 : 1);
}

/** Seconds of an exercise: its warm-ups, its sets, and the middle of the rest range between them. */
export function exerciseSeconds(exercise: ClockedExercise): number {
  const { sets, rest, warmUps } = exercise;
  const work = sets.reduce((sum, count) => sum + setSeconds(count, exercise), 0);
  const rests = Math.max(0, sets.length - 1) * ((rest.from + rest.to) / 2);
  return warmUps * CLOCK.warmUpSet + work + rests;
}

/** Seconds of a whole session at a pace (1 is as planned; see {@link ownPace}). */
export function sessionSeconds(
  exercises: readonly ClockedExercise[],
  pace = 1,
  between: number = CLOCK.betweenExercises,
): number {
  const work = exercises.reduce((sum, exercise) => sum + exerciseSeconds(exercise), 0);
  return pace * (work + Math.max(0, exercises.length - 1) * between);
}

/** What a past session was planned to take and what it took, in seconds. */
export interface PaceSample {
  readonly planned: number;
  readonly took: number;
}

/** How long sessions take compared with the plan: the median of the lifter's own, or 1 before there are five. */
export function ownPace(samples: readonly PaceSample[]): number {
  const paces = samples
    .filter(({ planned, took }) => planned > 0 && took > 0)
    .map(({ planned, took }) => took / planned);
  return paces.length < CLOCK.sessionsForOwnPace ? 1 : (median(paces) ?? 1);
}
