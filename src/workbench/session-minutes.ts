import type { History } from '../journal/history.ts';
import type { Prescription } from '../progression/prescription.ts';
import { ownPace, type PaceSample, sessionSeconds } from '../training/set-clock.ts';
import { clockedExercise } from './clocked-exercise.ts';

/** Minutes that a prescription takes: by the clock of sets, then at the lifter's own pace. */
export function sessionMinutes(
  prescription: Prescription,
  history: Pick<History, 'latest'>,
): number {
  return Math.round(plannedSeconds(prescription, ownPace(paceSamples(history))) / 60);
}

function plannedSeconds({ exercises, restBetween }: Prescription, pace: number): number {
  const between = (restBetween.from + restBetween.to) / 2;
  return sessionSeconds(exercises.map(clockedExercise), pace, between);
}

/** Only sessions that were finished tell how long a plan takes. */
function paceSamples({ latest }: Pick<History, 'latest'>): PaceSample[] {
  return latest
    .filter(({ done }) => done.how === 'closed')
    .map(({ done, planned }) => ({
      planned: plannedSeconds(planned, 1),
      took: (done.end - done.start) / 1000,
    }));
}
