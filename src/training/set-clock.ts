import { median } from 'd3-array';
import { turnsOf } from './pairing.ts';

/** How long things take, in seconds. */
export const CLOCK = {
  /** Marshall 2012. */
  rep: 3,
  /** Common practice. */
  betweenExercises: 60,
  /** A few reps and a minute's rest behind them. Common practice. */
  warmUpSet: 75,
  /** From so many sessions on the lifter's own pace counts. Ours. */
  sessionsForOwnPace: 5,
  /** Who takes so many times as long, or that share of it, did something else beside. Ours. */
  farFromPlan: 3,
} as const;

/**
 * Seconds from a set of one lift to the next of its partner, where sets of two or three alternate:
 * a breath and the way over. Ours; each lift rests by its own rest beside it.
 */
export const PAIR_REST = { from: 60, to: 90 } as const;

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
  /** Its sets are a lead set and mini-sets, done in one go. */
  readonly inOneGo?: boolean;
  /** Exercises of one pair alternate their sets. */
  readonly pair?: string | undefined;
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
  const turns = turnsOf(exercises);
  const work = turns.reduce((sum, turn) => sum + turnSeconds(turn), 0);
  return pace * (work + Math.max(0, turns.length - 1) * between);
}

/**
 * Seconds of exercises whose sets alternate: each set begins a breath after its partner's, and not
 * before the middle of its own rest is over.
 */
function turnSeconds(exercises: readonly ClockedExercise[]): number {
  const [only] = exercises;
  if (only && exercises.length === 1) return exerciseSeconds(only);
  const middle = ({ from, to }: ClockedExercise['rest']): number => (from + to) / 2;
  const turns = exercises.map((exercise) => ({
    rest: middle(exercise.rest),
    sets: exercise.inOneGo
      ? [exerciseSeconds({ ...exercise, warmUps: 0 })]
      : exercise.sets.map((count) => setSeconds(count, exercise)),
    rested: 0,
  }));
  const warmUps = exercises.reduce((sum, each) => sum + each.warmUps, 0) * CLOCK.warmUpSet;
  let now = warmUps;
  let last: (typeof turns)[number] | null = null;
  for (let round = 0; turns.some(({ sets }) => round < sets.length); round++) {
    for (const turn of turns) {
      const set = turn.sets[round];
      if (set === undefined) continue;
      const breath = last === null || last === turn ? 0 : middle(PAIR_REST);
      now = Math.max(now + breath, turn.rested) + set;
      turn.rested = now + turn.rest;
      last = turn;
    }
  }
  return now;
}

/** What a past session was planned to take and what it took, in seconds. */
export interface PaceSample {
  readonly planned: number;
  readonly took: number;
}

/**
 * How long sessions take compared with the plan: the median of the lifter's own, or 1 before there are
 * five that are not far from it.
 */
export function ownPace(samples: readonly PaceSample[]): number {
  const { farFromPlan } = CLOCK;
  const paces = samples
    .map(({ planned, took }) => took / planned)
    .filter((pace) => pace >= 1 / farFromPlan && pace <= farFromPlan);
  return paces.length < CLOCK.sessionsForOwnPace ? 1 : (median(paces) ?? 1);
}
