import { type ClockedExercise, sessionSeconds } from '../training/set-clock.ts';
import { isWarm, usualWarmUps } from '../training/warm-up.ts';
import type { PrescribedExercise, Prescription } from './prescription.ts';

/** Seconds that a prescription takes by the clock of sets, at a pace (1 is as planned). */
export function plannedSeconds(
  { exercises, restBetween }: Pick<Prescription, 'exercises' | 'restBetween'>,
  pace: number,
): number {
  const between = (restBetween.from + restBetween.to) / 2;
  return sessionSeconds(exercises.map(clockedExercise), pace, between);
}

/** What the set clock needs to know of a prescribed exercise; of a cluster every mini-set it may have. */
function clockedExercise(
  exercise: PrescribedExercise,
  at: number,
  all: readonly PrescribedExercise[],
): ClockedExercise {
  const { counts, sets, minis, rest, perSide } = exercise;
  const aims = sets.map(({ aim }) => aim);
  const minisAims = minis ? Array<number>(minis.mostSets - 1).fill(minis.aim) : [];
  return {
    counts,
    sets: [...aims, ...minisAims],
    rest,
    perSide,
    warmUps: warmUpsOf(exercise, all.slice(0, at)),
    inOneGo: minis !== null,
    pair: exercise.pair,
  };
}

/** Warm-up sets; while the load is still to be chosen, as many as the usual ramp has. */
function warmUpsOf(exercise: PrescribedExercise, before: readonly PrescribedExercise[]): number {
  const { load, warmUp, warmsUp, range } = exercise;
  if (load !== null || warmsUp !== true) return warmUp.length;
  const warmth = isWarm(exercise.trains, before) ? 'muscles-warm' : 'first-for-muscles';
  return usualWarmUps({ ...exercise, lo: range[0], warmth });
}
