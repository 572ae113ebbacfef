import type { Lift } from '../../training/lift.ts';
import type { Unit } from '../../training/mass.ts';
import { PACES } from './draft-limits.ts';
import { newExercise } from './drafted-exercises.ts';
import { writtenExercise } from './written-exercise.ts';

/** How a lift is usually done, with the keys of a program file; its load is left to the first session. */
export const usualExercise = (lift: Lift, unit: Unit, gearUnit: Unit) =>
  writtenExercise(newExercise(lift, PACES[0]!), unit, gearUnit);
