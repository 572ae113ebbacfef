import type { History } from '../journal/history.ts';
import type { Prescription } from '../progression/prescription.ts';
import { ownPace, type PaceSample, sessionSeconds } from '../training/set-clock.ts';
import { clockedExercise } from './clocked-exercise.ts';

/** Sessions that the lifter's pace is read from. */
const PACE_SESSIONS = 20;

/** Minutes that a prescription takes: by the clock of sets, then at the lifter's own pace. */
export function sessionMinutes(prescription: Prescription, history: History): number {
  return Math.round(plannedSeconds(prescription, ownPace(paceSamples(history))) / 60);
}

function plannedSeconds({ exercises, restBetween }: Prescription, pace: number): number {
  const between = (restBetween.from + restBetween.to) / 2;
  return sessionSeconds(exercises.map(clockedExercise), pace, between);
}

/** Only sessions that were finished tell how long a plan takes. */
function paceSamples({ closed, sessions }: History): PaceSample[] {
  const finished = new Map(
    sessions.filter(({ how }) => how === 'closed').map((done) => [done.session, done]),
  );
  return closed.slice(-PACE_SESSIONS).flatMap(({ session, prescription }) => {
    const done = finished.get(session);
    return done
      ? [{ planned: plannedSeconds(prescription, 1), took: (done.end - done.start) / 1000 }]
      : [];
  });
}
