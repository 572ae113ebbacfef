import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionEvent } from './events.ts';
import type { ExerciseState, LiftWork, SessionState } from './state.ts';

type Opening = Extract<SessionEvent, { type: 'session-opened' }>;

/** The state before the first set. Its stage is left to be settled. */
export function openSession({ session, device, prescription, at, zone }: Opening): SessionState {
  return {
    session,
    device,
    prescription,
    exercises: prescription.exercises.map(untouched),
    stage: { kind: 'all-done' },
    current: null,
    chosen: null,
    lastDown: null,
    loaded: [],
    pausedSince: null,
    pausedMs: 0,
    openedAt: at,
    lastAt: at,
    zone,
    notes: [],
    events: [],
  };
}

const untouched = (prescribed: PrescribedExercise): ExerciseState => ({
  ...noWork(prescribed),
  leftOut: false,
  notes: [],
  earlier: [],
});

export const noWork = (prescribed: PrescribedExercise): LiftWork => ({
  prescribed,
  judgedBy: null,
  done: [],
  doneBeforeChange: 0,
  warmUpsDone: 0,
  warmUpsSkipped: false,
  added: 0,
  skipped: 0,
  clusterEnd: null,
  pain: false,
});
