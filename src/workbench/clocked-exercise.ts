import type { PrescribedExercise } from '../progression/prescription.ts';
import type { ClockedExercise } from '../training/set-clock.ts';

/** What the set clock needs to know of a prescribed exercise; of a cluster every mini-set it may have. */
export function clockedExercise(exercise: PrescribedExercise): ClockedExercise {
  const { counts, sets, minis, rest, perSide, warmUp } = exercise;
  const aims = sets.map(({ aim }) => aim);
  const minisAims = minis ? Array<number>(minis.mostSets - 1).fill(minis.aim) : [];
  return { counts, sets: [...aims, ...minisAims], rest, perSide, warmUps: warmUp.length };
}
