import type { PrescribedExercise } from '../progression/prescription.ts';
import { noWork } from './open-session.ts';
import type { ExerciseState, LiftWork } from './state.ts';

/**
 * The exercise as `by` prescribes it. On the same track the sets done stay and only what is left
 * changes. Another track starts with no sets; the work on the one given up is kept apart, and
 * taken up again when the lifter comes back to it.
 */
export function replaceLift(exercise: ExerciseState, by: PrescribedExercise): ExerciseState {
  const { leftOut: _, notes, earlier, ...present } = exercise;
  if (by.track === present.prescribed.track) {
    return { ...exercise, ...prescribedAnew(present, by), leftOut: false };
  }
  const before = earlier.find(({ prescribed }) => prescribed.track === by.track);
  const others = earlier.filter((work) => work !== before);
  const work = before ? prescribedAnew(before, by) : noWork(by);
  const kept = hasResult(present) ? [...others, present] : others;
  return { ...work, leftOut: false, notes, earlier: kept };
}

/** Is there anything to keep of this work: sets, or a pain to ask about next time? */
export const hasResult = ({ done, pain }: LiftWork): boolean => done.length > 0 || pain;

const prescribedAnew = (work: LiftWork, by: PrescribedExercise): LiftWork => ({
  ...work,
  prescribed: by,
  doneBeforeChange: work.done.length,
});
