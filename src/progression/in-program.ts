import type { Exercise } from '../program/program.ts';
import type { PrescribedExercise } from './prescription.ts';

/** An exercise where its day holds it. */
export const standingIn = (
  prescribed: PrescribedExercise,
  day: string,
  position: number,
  { lift }: Pick<Exercise, 'lift'>,
): PrescribedExercise => ({ ...prescribed, inProgram: { day, position, lift: lift.key } });

/**
 * The one of a day's exercises that stands where `one` stood in it; where the file was changed
 * since, or an old journal does not tell, the one on its track. Null where there is none.
 */
export function atSamePlace(
  one: Pick<PrescribedExercise, 'inProgram' | 'track'>,
  exercises: readonly PrescribedExercise[],
): PrescribedExercise | null {
  const { inProgram: place, track } = one;
  const there = exercises.find(
    ({ inProgram }) =>
      inProgram && inProgram.position === place?.position && inProgram.lift === place.lift,
  );
  return there ?? exercises.find((each) => each.track === track) ?? null;
}

/** Was it done as the lift that the program wrote there, not in the place of another? */
export const isInOwnPlace = ({
  inProgram,
  lift,
}: Pick<PrescribedExercise, 'inProgram' | 'lift'>): boolean =>
  inProgram === undefined || inProgram.lift === lift;
