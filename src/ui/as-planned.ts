import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionCommand } from '../session/command.ts';
import { openSets, worksOf } from '../session/next-set.ts';
import type { DoneSet, SessionState } from '../session/state.ts';
import { numbersText } from './words.ts';

/** Sets that were saved as planned and wait for one confirming key, one text for each exercise. */
export const asPlannedTexts = (session: SessionState): readonly string[] =>
  session.exercises.flatMap(worksOf).flatMap(({ prescribed, done }) => {
    const sets = done.filter(({ entered }) => entered === 'as-planned');
    return sets.length > 0 ? [setsText(prescribed, sets)] : [];
  });

function setsText(exercise: PrescribedExercise, sets: readonly DoneSet[]): string {
  const [first] = sets;
  if (sets.length === 1 && first) return `${exercise.name} · ${numbersText(first, exercise)}`;
  return `${exercise.name} · ${sets.map(({ count }) => count).join(', ')} ${exercise.counts}`;
}

/** Confirms them; nothing where there are none. */
export const confirming = (session: SessionState | null): readonly SessionCommand[] =>
  session && openSets(session).length > 0 ? [{ do: 'confirm' }] : [];
