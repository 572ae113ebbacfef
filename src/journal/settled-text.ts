import { Temporal } from 'temporal-polyfill';
import type { Result, SessionDone } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SettledPast, SettledSession } from './settled-past.ts';

/** What differs from one session to the next; the rest of an exercise is written once. */
type Vary = 'load' | 'system' | 'sets' | 'warmUp' | 'move' | 'why' | 'last' | 'askPain';

type Varying = Pick<PrescribedExercise, Vary>;
type Constant = Omit<PrescribedExercise, Vary>;

/** A result without what its session tells. */
interface WrittenResult extends Pick<Result, 'sets' | 'finished' | 'pain' | 'lighter'> {
  /** Position in the list of exercises. */
  readonly exercise: number;
  readonly varying: Varying;
}

interface WrittenSession extends Omit<SettledSession, 'done' | 'results'> {
  readonly done: Omit<SessionDone, 'date'> & { readonly date: string };
  readonly results: readonly WrittenResult[];
}

interface Written extends Omit<SettledPast, 'sessions'> {
  readonly exercises: readonly Constant[];
  readonly sessions: readonly WrittenSession[];
}

/** A settled past as JSON text. */
export function settledText({ sessions, ...rest }: SettledPast): string {
  const exercises = new Map<string, number>();
  const positionOf = (constant: Constant): number => {
    const text = JSON.stringify(constant);
    const position = exercises.get(text) ?? exercises.size;
    exercises.set(text, position);
    return position;
  };
  const written = sessions.map(({ done, results, ...session }) => ({
    ...session,
    done: { ...done, date: done.date.toString() },
    results: results.map(({ exercise, sets, finished, pain, lighter }): WrittenResult => {
      const { load, system, sets: asked, warmUp, move, why, last, askPain, ...constant } = exercise;
      const varying = { load, system, sets: asked, warmUp, move, why, last, askPain };
      return { exercise: positionOf(constant), varying, sets, finished, pain, lighter };
    }),
  }));
  return JSON.stringify({
    ...rest,
    sessions: written,
    exercises: [...exercises.keys()].map((text) => JSON.parse(text) as Constant),
  } satisfies Written);
}

/**
 * Reads what {@link settledText} wrote; its shape is not checked.
 * @throws SyntaxError where it is not JSON
 */
export function readSettled(text: string): SettledPast {
  const { sessions, exercises, ...rest } = JSON.parse(text) as Written;
  return {
    ...rest,
    sessions: sessions.map(({ done: written, results, ...session }): SettledSession => {
      const done = { ...written, date: Temporal.PlainDate.from(written.date) };
      const { start, date, program, day } = done;
      return {
        ...session,
        done,
        results: results.map(({ exercise, varying, ...result }) => ({
          ...result,
          session: session.session,
          start,
          date,
          program,
          day,
          exercise: { ...(exercises[exercise] as Constant), ...varying },
        })),
      };
    }),
  };
}
