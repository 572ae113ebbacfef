import { type ClockedExercise, sessionSeconds } from '../training/set-clock.ts';
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
function clockedExercise(exercise: PrescribedExercise): ClockedExercise {
  const { counts, sets, minis, rest, perSide, warmUp } = exercise;
  const aims = sets.map(({ aim }) => aim);
  const minisAims = minis ? Array<number>(minis.mostSets - 1).fill(minis.aim) : [];
  return { counts, sets: [...aims, ...minisAims], rest, perSide, warmUps: warmUp.length };
}
