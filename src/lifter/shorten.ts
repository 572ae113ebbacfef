import { weekLack } from '../cut/week-lack.ts';
import type { History } from '../journal/history.ts';
import type { Program } from '../program/program.ts';
import type { Circumstances } from '../progression/past.ts';
import { plannedSeconds } from '../progression/planned-seconds.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { shortDay } from '../progression/short-day.ts';
import type { SessionCommand } from '../session/command.ts';
import { isCluster, isOver } from '../session/next-set.ts';
import type { ExerciseState, SessionState } from '../session/state.ts';
import { paceOf } from './prepare.ts';

type Shorten = Extract<SessionCommand, { do: 'shorten' }>;

/** What is behind a session that runs, as far as its time is worked out from it. */
export interface ShortenSources {
  readonly history: History;
  /** Null where its file cannot be read: then nothing of the week is known to lack. */
  readonly program: Program | null;
  readonly circumstances: Circumstances;
}

/** Minutes that what is left of a session takes at the lifter's own pace. */
export const minutesLeft = (session: SessionState, { history }: ShortenSources): number =>
  Math.round(plannedSeconds(leftOf(session), paceOf(history)) / 60);

/** What is left of a session cut to so many minutes, the way a short day is; to be sent to the session. */
export function shortenTo(
  session: SessionState,
  minutes: number,
  { history, program, circumstances }: ShortenSources,
): Shorten {
  const { gear, today } = circumstances;
  const lacks = program ? weekLack(program, history, today) : new Map();
  const left = leftOf(session);
  const cut = shortDay(left, { minutes, pace: paceOf(history), gear, lacks });
  const kept = new Map(cut.exercises.map((each) => [each.track, each]));
  return {
    do: 'shorten',
    minutes,
    restBetween: cut.restBetween,
    exercises: left.exercises.map(({ track }) => {
      const exercise = Number(track);
      const work = session.exercises[exercise];
      const found = kept.get(track);
      return {
        exercise,
        sets: (work?.done.length ?? 0) + (work?.skipped ?? 0) + (found?.sets.length ?? 0),
        rest: found?.rest ?? work?.prescribed.rest ?? cut.restBetween,
      };
    }),
    cut: cut.short?.cut ?? [],
  };
}

/** What is left to do as a day of its own; each exercise goes by its position. A cluster under way runs to its end. */
const leftOf = (session: SessionState): Prescription => ({
  ...session.prescription,
  exercises: session.exercises.flatMap((each, at) => {
    const isOpen = !isOver(each) && !(isCluster(each) && each.done.length > 0);
    return isOpen ? [remaining(each, String(at))] : [];
  }),
});

function remaining(each: ExerciseState, track: string): PrescribedExercise {
  const { prescribed, done, skipped, warmUpsDone, warmUpsSkipped } = each;
  const behind = done.length + skipped;
  const isWarm = behind > 0 || warmUpsSkipped || warmUpsDone > 0;
  return {
    ...prescribed,
    track,
    sets: prescribed.sets.slice(behind),
    ...(isWarm && { warmUp: [], warmsUp: false }),
  };
}
