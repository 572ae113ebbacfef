import type { SessionDone } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { elapsedMs } from '../training/reading.ts';
import { worksOf } from './done-sets.ts';
import { isCluster } from './next-set.ts';
import { dateOf } from './results.ts';
import type { LiftWork, SessionState } from './state.ts';

/** The session as progression and the calendar count it. It ends with its last set. */
export function sessionDoneOf(state: SessionState): SessionDone {
  const { session, prescription, openedAt, lastDown, stage } = state;
  const finished = stage.kind === 'closed' && stage.how === 'finished';
  return {
    session,
    start: openedAt.wall,
    end: openedAt.wall + (lastDown ? elapsedMs(openedAt, lastDown.at) : 0),
    date: dateOf(state),
    program: prescription.program,
    day: prescription.day,
    aim: prescription.aim,
    setsPlanned: setsAsked(prescription.exercises),
    setsDone: setsCountedIn(state),
    how: finished ? 'closed' : 'abandoned',
    foreign: false,
  };
}

/** Work sets that a prescription asks for; a cluster counts as one. */
export const setsAsked = (exercises: readonly PrescribedExercise[]): number =>
  exercises.reduce((sum, { minis, sets }) => sum + (minis ? 1 : sets.length), 0);

/** Work sets done; a cluster counts as one when its lead set is done. */
export const setsCountedIn = ({ exercises }: Pick<SessionState, 'exercises'>): number =>
  exercises.flatMap(worksOf).reduce((sum, work) => sum + counted(work), 0);

const counted = (work: LiftWork): number =>
  isCluster(work) ? Math.min(1, work.done.length) : work.done.length;
