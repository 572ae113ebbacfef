import type { Range } from '../program/program.ts';
import type { PrescribedExercise } from './prescription.ts';

/** Reserve asked for in a table of the lifter's own: nothing was. */
export const ANY_RESERVE: Range = [0, 10];

/** Did the exercise come out of a table of the lifter's own? Nobody prescribed it, so each row of it is a first time. */
export const isFromTable = ({ move, reserve }: Pick<PrescribedExercise, 'move' | 'reserve'>) =>
  move === 'start' && reserve[0] === ANY_RESERVE[0] && reserve[1] === ANY_RESERVE[1];
