import type { Day, Program } from '../program/program.ts';
import { andText } from '../text/words.ts';
import type { Reason } from '../training/rule.ts';
import { atSamePlace } from './in-program.ts';
import type { Circumstances, DoneExercise, Past, SessionDone } from './past.ts';
import type { PrescribedExercise, Prescription } from './prescription.ts';
import { restAdvice } from './rest-advice.ts';
import { because } from './rules/progression-rules.ts';

type Today = Circumstances['today'];

export interface DueDay {
  readonly day: Day;
  readonly why: Reason;
  /** Why today is better a day of rest; the lifter may go on. */
  readonly rest: Reason | null;
  /** The next date on which nothing speaks for rest; today where nothing does. */
  readonly nextGood: Today;
  /** The session in which the day was begun and not half finished, and what was done in it; null otherwise. */
  readonly begun: Begun | null;
  /** What is unsure of it, because the day or the program has another name since; null otherwise. */
  readonly renamed: Reason | null;
}

export interface Begun {
  readonly session: string;
  readonly done: readonly DoneExercise[];
}

/** A day begun longer ago than this is done anew, from its first exercise. Ours. */
const BEGUN_DAYS = 2;

/**
 * The day that is due: the one after the last of which at least half the planned sets were done,
 * else that day again. The weekday plays no part, and missed days are never doubled up.
 */
export function dueDay(program: Program, past: Past, today: Today): DueDay {
  const { day, why, begun, renamed } = turn(program, past, today);
  return { day, why, begun, renamed, ...restAdvice(past, day, today) };
}

function turn(
  program: Program,
  past: Past,
  today: Today,
): Pick<DueDay, 'day' | 'why' | 'begun' | 'renamed'> {
  const { days } = program;
  const [first] = days;
  if (!first) throw new RangeError('A program has at least one day.');
  const done = past.sessions.filter(({ setsDone }) => setsDone > 0);
  const found = lastOfProgram(program, past, done, today);
  if (!found)
    return {
      day: first,
      why: because('due-first', { day: first.name }),
      begun: null,
      renamed: null,
    };
  const { last, at, unknown } = found;
  const matched = days[at]?.name ?? '';
  const isByName = last.program === program.name && last.day === matched;
  const renamed = unknown
    ? because('day-unknown', { done: unknown.day, date: unknown.date.toString() })
    : isByName
      ? null
      : because('day-matched', {
          done: last.day,
          program: last.program,
          date: last.date.toString(),
          matched,
        });
  if (at < 0)
    return { day: first, why: because('due-first', { day: first.name }), begun: null, renamed };
  const pieces = piecesOf(done, last);
  const setsDone = pieces.reduce((sum, each) => sum + each.setsDone, 0);
  if (setsDone * 2 >= last.setsPlanned) {
    const day = days[(at + 1) % days.length] ?? first;
    const facts = { day: day.name, done: last.day, date: last.date.toString() };
    return { day, why: because('due-next', facts), begun: null, renamed };
  }
  const day = days[at] ?? first;
  const facts = {
    day: day.name,
    date: last.date.toString(),
    setsDone,
    setsPlanned: last.setsPlanned,
  };
  return {
    day,
    why: because('due-again', facts),
    begun: begunOf(past, pieces, last, today),
    renamed,
  };
}

/** So many sessions are looked back on for one of the program's days under another name. Ours. */
const LOOKED_BACK = 14;
/** What was trained longer ago under another name says nothing of whose turn it is. Ours. */
const LOOKED_BACK_DAYS = 28;
/** A day under another name holds at least this share of the lifts that were trained. Ours. */
const SAME_DAY = 2 / 3;

/**
 * The last session of this program and its day there: by their names, else by the exercises that
 * were trained, and the latest session that is like no day of it. The day is −1 where the program
 * has none such any more; null without any session.
 */
function lastOfProgram(
  { name, days }: Program,
  past: Past,
  done: readonly SessionDone[],
  today: Today,
) {
  const own = done.filter(({ program }) => program === name);
  // A program without a session of its name is a new one, or an old one with another name.
  const lately = ({ date }: SessionDone) =>
    date.until(today, { largestUnit: 'days' }).days <= LOOKED_BACK_DAYS;
  const candidates = own.length > 0 ? own : done.slice(-LOOKED_BACK).filter(lately);
  let unknown: SessionDone | null = null;
  for (const last of candidates.slice(-LOOKED_BACK).toReversed()) {
    const named = own.length > 0 ? days.findIndex((day) => day.name === last.day) : -1;
    const at = named >= 0 ? named : dayTrained(days, past, last, own.length > 0 ? SAME_DAY : 1);
    if (at >= 0) return { last, at, unknown };
    if (own.length > 0) unknown ??= last;
  }
  return unknown && { last: unknown, at: -1, unknown };
}

/** The one day that holds at least `share` of the lifts trained in a session; −1 where none or several do as well. */
function dayTrained(
  days: readonly Day[],
  past: Past,
  { session }: SessionDone,
  share: number,
): number {
  const trained = new Set(
    past.results.filter((each) => each.session === session).map(({ exercise }) => exercise.lift),
  );
  if (trained.size === 0) return -1;
  const shares = days.map(({ exercises }) => {
    const lifts = new Set(exercises.map(({ lift }) => lift.key));
    return [...trained].filter((lift) => lifts.has(lift)).length / trained.size;
  });
  const most = Math.max(...shares);
  return most >= share && shares.indexOf(most) === shares.lastIndexOf(most)
    ? shares.indexOf(most)
    : -1;
}

/** The sessions of one day that together may make it done: the last, and those just before it that were begun and not half finished. */
function piecesOf(done: readonly SessionDone[], last: SessionDone): readonly SessionDone[] {
  const pieces = [last];
  for (const each of [...done].reverse().slice(1)) {
    const near = each.date.until(last.date, { largestUnit: 'days' }).days <= BEGUN_DAYS;
    if (each.day !== last.day || each.setsDone * 2 >= each.setsPlanned || !near) break;
    pieces.push(each);
  }
  return pieces;
}

function begunOf(
  past: Past,
  pieces: readonly SessionDone[],
  last: SessionDone,
  today: Today,
): Begun | null {
  if (last.date.until(today, { largestUnit: 'days' }).days > BEGUN_DAYS) return null;
  const sessions = new Set(pieces.map(({ session }) => session));
  const finished = past.results
    .filter((result) => result.finished && sessions.has(result.session))
    .map(({ exercise }) => exercise);
  return finished.length === 0 ? null : { session: last.session, done: finished };
}

/** What was done when the day was begun is not done again; the rest of it is what is due. */
export function leftOfDay(whole: Prescription, { done }: Begun): Prescription {
  const doneOnes = new Set(done.map((each) => atSamePlace(each, whole.exercises)));
  const isDone = (exercise: PrescribedExercise) => doneOnes.has(exercise);
  const names = whole.exercises.filter(isDone).map(({ name }) => name);
  const exercises = whole.exercises.filter((exercise) => !isDone(exercise));
  if (names.length === 0 || exercises.length === 0) return whole;
  const told = because('begun-day', { day: whole.day, names: andText(names) });
  return { ...whole, exercises, warnings: [told, ...whole.warnings] };
}
