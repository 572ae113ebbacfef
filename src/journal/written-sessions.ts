import type { DoneExercise, Entered, Result, SessionDone, SetResult } from '../progression/past.ts';
import { dateOfDay, dayNumber } from '../training/day-number.ts';
import type { Mass } from '../training/mass.ts';
import type { SettledSession } from './fold-history.ts';
import { fileOf, sequenceOf } from './lines.ts';

/** What differs from one session to the next; the rest of an exercise is written once. */
type Vary = 'load' | 'system' | 'sets' | 'move' | 'why';

type Constant = Omit<DoneExercise, Vary>;

/** Aim and range of each set; the keys of reasons. */
type WrittenPlan = readonly [
  load: Mass | null,
  system: Mass | null,
  move: DoneExercise['move'],
  sets: readonly (readonly [aim: number, low: number, high: number])[],
  why: readonly string[],
];

/** The id is that of its file and a number, as a rule of the session's own. */
type WrittenSet = readonly [
  id: string | number,
  load: Mass,
  count: number,
  reserve: number | null,
  entered: Entered,
  failed?: 1,
];

/** A result without what its session tells. */
interface WrittenResult extends Pick<Result, 'finished' | 'pain' | 'lighter'> {
  /** Position in the list of exercises. */
  readonly exercise: number;
  readonly plan: WrittenPlan;
  readonly sets: readonly WrittenSet[];
}

interface WrittenSession extends Omit<SettledSession, 'done' | 'results'> {
  /** The date as days since 1970. */
  readonly done: Omit<SessionDone, 'date'> & { readonly date: number };
  readonly results: readonly WrittenResult[];
}

export interface WrittenSessions {
  readonly exercises: readonly Constant[];
  readonly sessions: readonly WrittenSession[];
}

/** Sessions as plain data, short: years of them are read at a start. */
export function writtenSessions(sessions: readonly SettledSession[]): WrittenSessions {
  const exercises = new Map<string, number>();
  const positionOf = (constant: Constant): number => {
    const text = JSON.stringify(constant);
    const position = exercises.get(text) ?? exercises.size;
    exercises.set(text, position);
    return position;
  };
  const written = sessions.map(({ done, results, ...session }) => ({
    ...session,
    done: { ...done, date: dayNumber(done.date) },
    results: results.map(({ exercise, sets, finished, pain, lighter }): WrittenResult => {
      const { load, system, move, sets: asked, why, ...constant } = exercise;
      return {
        exercise: positionOf(constant),
        plan: [
          load,
          system,
          move,
          asked.map(({ aim, range }) => [aim, ...range] as const),
          why.map(({ rule }) => rule),
        ],
        sets: sets.map((set) => writtenSet(set, session.session)),
        finished,
        pain,
        lighter,
      };
    }),
  }));
  return {
    sessions: written,
    exercises: [...exercises.keys()].map((text) => JSON.parse(text) as Constant),
  };
}

/** Reads what {@link writtenSessions} made; its shape is not checked. */
export function readSessions({ sessions, exercises }: WrittenSessions): SettledSession[] {
  return sessions.map(({ done: written, results, ...session }) => {
    const done = { ...written, date: dateOfDay(written.date) };
    const { start, date, program, day } = done;
    return {
      ...session,
      done,
      results: results.map(({ exercise, plan, sets, finished, pain, lighter }) => ({
        session: session.session,
        start,
        date,
        program,
        day,
        exercise: withPlan(exercises[exercise] as Constant, plan),
        sets: sets.map((set) => readSet(set, session.session)),
        finished,
        pain,
        lighter,
      })),
    };
  });
}

// Thousands are read at a start: what is taken by number makes no iterator, which costs most of it.
const withPlan = (
  constant: Constant,
  { 0: load, 1: system, 2: move, 3: sets, 4: why }: WrittenPlan,
) => ({
  ...constant,
  load,
  system,
  move,
  sets: sets.map(({ 0: aim, 1: low, 2: high }) => ({ aim, range: [low, high] as const })),
  why: why.map((rule) => ({ rule })),
});

function writtenSet({ id, load, count, reserve, entered, failed }: SetResult, session: string) {
  const ofSession = fileOf(id) === session && id === `${session}:${sequenceOf(id)}`;
  const of = ofSession ? sequenceOf(id) : id;
  const set = [of, load, count, reserve, entered] as const;
  return failed ? ([...set, 1] as const) : set;
}

function readSet(
  { 0: id, 1: load, 2: count, 3: reserve, 4: entered, 5: failed }: WrittenSet,
  session: string,
): SetResult {
  const set = { load, count, reserve, ...(failed && { failed: true }), entered };
  return { id: typeof id === 'number' ? `${session}:${id}` : id, ...set };
}
