import { Temporal } from 'temporal-polyfill';
import type { DoneExercise, Result, SessionDone } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { elapsedMs } from '../training/reading.ts';
import { isCluster, setsAskedOf, setsCounted, worksOf } from './next-set.ts';
import { hasResult } from './set-changes.ts';
import type { ExerciseState, LiftWork, SessionState } from './state.ts';

/**
 * What the session leaves behind for progression, one result for each track that was trained or on
 * which pain was marked, in the session's order. Of a discarded session: none.
 */
export function resultsOf(state: SessionState): Result[] {
  const { stage, exercises } = state;
  if (stage.kind === 'closed' && stage.how === 'discarded') return [];
  const date = dateOf(state);
  return exercises
    .flatMap(worksOf)
    .filter((work) => hasResult(work) && !lacksLead(work))
    .map((work) => resultOf(work, state, date));
}

/** The local day on which the session was opened. */
export const dateOf = ({ openedAt, zone }: Pick<SessionState, 'openedAt' | 'zone'>) =>
  localDate(openedAt.wall, zone);

function resultOf(work: LiftWork, state: SessionState, date: Result['date']): Result {
  const { session, prescription, openedAt } = state;
  return {
    session,
    start: openedAt.wall,
    date,
    program: prescription.program,
    day: prescription.day,
    exercise: doneExercise(work.judgedBy ?? work.prescribed),
    sets: work.done.map(({ id, load, count, reserve, failed, entered }) => ({
      id,
      load,
      count,
      reserve,
      ...(failed && { failed }),
      entered,
    })),
    finished: isFinished(work),
    pain: work.pain,
    lighter: prescription.lighter,
  };
}

/** Years of results are held: what was said of the plan stays with its session. */
function doneExercise({
  why,
  last: _last,
  warmUp: _warmUp,
  askPain: _askPain,
  ...exercise
}: PrescribedExercise): DoneExercise {
  return { ...exercise, why: why.map(({ rule }) => ({ rule })) };
}

/** A cluster whose lead set was deleted afterwards: its mini-sets alone tell nothing. */
const lacksLead = (work: LiftWork): boolean =>
  isCluster(work) && work.done.length > 0 && work.done[0]?.role !== 'lead';

function isFinished(work: LiftWork): boolean {
  const { done, clusterEnd, prescribed } = work;
  if (prescribed.minis) {
    const ended = clusterEnd !== null && clusterEnd !== 'lifter';
    return ended || done.length >= prescribed.minis.mostSets;
  }
  return work.skipped === 0 && setsCounted(work) >= prescribed.sets.length;
}

/** The session as progression and the calendar count it. It ends with its last set. */
export function sessionDoneOf(state: SessionState): SessionDone {
  const { session, prescription, openedAt, lastDown, stage } = state;
  const { at: endedAt } = lastDown ?? { at: openedAt };
  const notes = [...state.notes, ...state.exercises.flatMap((exercise) => exercise.notes)];
  const finished = stage.kind === 'closed' && stage.how === 'finished';
  return {
    session,
    start: openedAt.wall,
    end: openedAt.wall + elapsedMs(openedAt, endedAt),
    date: dateOf(state),
    program: prescription.program,
    day: prescription.day,
    aim: prescription.aim,
    ...(prescription.daysPerWeek !== undefined && { daysPerWeek: prescription.daysPerWeek }),
    setsPlanned: setsAsked(prescription.exercises),
    setsDone: setsCountedIn(state),
    how: finished ? 'closed' : 'abandoned',
    unit: prescription.unit,
    ...(notes.length > 0 && { notes }),
    foreign: false,
  };
}

/** Work sets that a prescription asks for; a cluster counts as one. */
export const setsAsked = (exercises: readonly PrescribedExercise[]): number =>
  exercises.reduce((sum, { minis, sets }) => sum + (minis ? 1 : sets.length), 0);

/** Work sets done; a cluster counts as one when its lead set is done. */
export const setsCountedIn = ({ exercises }: Pick<SessionState, 'exercises'>): number =>
  exercises.flatMap(worksOf).reduce((sum, work) => sum + counted(work), 0);

/**
 * Work sets that the session asks for as it is now, those added, skipped or left out among them; a
 * cluster counts as one.
 */
export const setsAskedIn = ({ exercises }: Pick<SessionState, 'exercises'>): number =>
  setsCountedIn({ exercises }) + exercises.reduce((sum, each) => sum + setsNotDone(each), 0);

function setsNotDone(exercise: ExerciseState): number {
  const skippedBefore = exercise.earlier.reduce((sum, { skipped }) => sum + skipped, 0);
  const notDone = setsAskedOf(exercise) - counted(exercise);
  return skippedBefore + Math.max(0, notDone);
}

const counted = (work: LiftWork): number =>
  isCluster(work) ? Math.min(1, work.done.length) : work.done.length;

/** The calendar day at an instant in epoch milliseconds, where local time is `zone` minutes ahead of UTC. */
export function localDate(wall: number, zone: number): Temporal.PlainDate {
  // Ten times as fast as by way of a zoned date and time, and read for every session of years.
  const at = new Date(wall + zone * 60_000);
  return new Temporal.PlainDate(at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate());
}
