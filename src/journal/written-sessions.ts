import type { DoneExercise, Entered, Result, SessionDone, SetResult } from '../progression/past.ts';
import { dateOfDay, dayNumber } from '../training/day-number.ts';
import type { Mass } from '../training/mass.ts';
import type { SettledSession } from './fold-history.ts';
import { fileOf, sequenceOf } from './lines.ts';

/** What differs from one session to the next; the rest of an exercise is written once. */
type Vary = 'load' | 'system' | 'sets' | 'move' | 'why';

type Constant = Omit<DoneExercise, Vary>;

/** What varies; of sets and reasons the position in the lists of those met. */
type WrittenPlan = readonly [
  load: Mass | null,
  system: Mass | null,
  move: DoneExercise['move'],
  sets: number,
  why: number,
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

/** What many results share is written once, and read as one. */
export interface WrittenSessions {
  readonly exercises: readonly Constant[];
  readonly sets: readonly DoneExercise['sets'][];
  readonly whys: readonly DoneExercise['why'][];
  readonly sessions: readonly WrittenSession[];
}

/** Values met so far, each once. */
class Met<Value> {
  private readonly positions = new Map<string, number>();
  readonly values: Value[] = [];

  positionOf(value: Value): number {
    const text = JSON.stringify(value);
    const known = this.positions.get(text);
    if (known !== undefined) return known;
    this.positions.set(text, this.values.length);
    return this.values.push(value) - 1;
  }
}

/** Sessions as plain data, short: years of them are read at a start. */
export function writtenSessions(sessions: readonly SettledSession[]): WrittenSessions {
  const exercises = new Met<Constant>();
  const sets = new Met<DoneExercise['sets']>();
  const whys = new Met<DoneExercise['why']>();
  const written = sessions.map(({ done, results, ...session }) => ({
    ...session,
    done: { ...done, date: dayNumber(done.date) },
    results: results.map(({ exercise, sets: done, finished, pain, lighter }): WrittenResult => {
      const { load, system, move, sets: asked, why, ...constant } = exercise;
      const rules = why.map(({ rule }) => ({ rule }));
      return {
        exercise: exercises.positionOf(constant),
        plan: [load, system, move, sets.positionOf(asked), whys.positionOf(rules)],
        sets: done.map((set) => writtenSet(set, session.session)),
        finished,
        pain,
        lighter,
      };
    }),
  }));
  return {
    exercises: exercises.values,
    sets: sets.values,
    whys: whys.values,
    sessions: written,
  };
}

/** Reads what {@link writtenSessions} made; its shape is not checked. */
export function readSessions({ sessions, ...shared }: WrittenSessions): SettledSession[] {
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
        exercise: withPlan(exercise, plan, shared),
        sets: sets.map((set) => readSet(set, session.session)),
        finished,
        pain,
        lighter,
      })),
    };
  });
}

function withPlan(
  exercise: number,
  [load, system, move, sets, why]: WrittenPlan,
  { exercises, sets: met, whys }: Omit<WrittenSessions, 'sessions'>,
): DoneExercise {
  const constant = exercises[exercise] as Constant;
  return { ...constant, load, system, move, sets: met[sets] ?? [], why: whys[why] ?? [] };
}

function writtenSet({ id, load, count, reserve, entered, failed }: SetResult, session: string) {
  const ofSession = fileOf(id) === session && id === `${session}:${sequenceOf(id)}`;
  const of = ofSession ? sequenceOf(id) : id;
  const set = [of, load, count, reserve, entered] as const;
  return failed ? ([...set, 1] as const) : set;
}

// Thousands are read at a start: what is taken by number makes no iterator, which costs most of it.
function readSet(
  { 0: id, 1: load, 2: count, 3: reserve, 4: entered, 5: failed }: WrittenSet,
  session: string,
): SetResult {
  const set = { load, count, reserve, ...(failed && { failed: true }), entered };
  return { id: typeof id === 'number' ? `${session}:${id}` : id, ...set };
}
