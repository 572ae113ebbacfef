import { andText } from '../program/check/words.ts';
import type { Day, Program } from '../program/program.ts';
import type { Reason } from '../training/rule.ts';
import type { Circumstances, Past, SessionDone } from './past.ts';
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
  /** The session in which the day was begun and not half finished, and the tracks done in it; null otherwise. */
  readonly begun: Begun | null;
}

export interface Begun {
  readonly session: string;
  readonly tracks: readonly string[];
}

/** A day begun longer ago than this is done anew, from its first exercise. Ours. */
const BEGUN_DAYS = 2;

/**
 * The day that is due: the one after the last of which at least half the planned sets were done,
 * else that day again. The weekday plays no part, and missed days are never doubled up.
 */
export function dueDay(program: Program, past: Past, today: Today): DueDay {
  const { day, why, begun } = turn(program, past, today);
  return { day, why, begun, ...restAdvice(past, day, today) };
}

function turn(
  program: Program,
  past: Past,
  today: Today,
): { readonly day: Day; readonly why: Reason; readonly begun: Begun | null } {
  const { days } = program;
  const [first] = days;
  if (!first) throw new RangeError('A program has at least one day.');
  const done = past.sessions.filter(
    (each) =>
      each.program === program.name &&
      each.setsDone > 0 &&
      days.some(({ name }) => name === each.day),
  );
  const last = done.at(-1);
  if (!last) return { day: first, why: because('due-first', { day: first.name }), begun: null };
  const at = days.findIndex(({ name }) => name === last.day);
  const pieces = piecesOf(done, last);
  const setsDone = pieces.reduce((sum, each) => sum + each.setsDone, 0);
  if (setsDone * 2 >= last.setsPlanned) {
    const day = days[(at + 1) % days.length] ?? first;
    const facts = { day: day.name, done: last.day, date: last.date.toString() };
    return { day, why: because('due-next', facts), begun: null };
  }
  const day = days[at] ?? first;
  const facts = {
    day: day.name,
    date: last.date.toString(),
    setsDone,
    setsPlanned: last.setsPlanned,
  };
  return { day, why: because('due-again', facts), begun: begunOf(past, pieces, last, today) };
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
  const tracks = past.results
    .filter(({ session, finished }) => finished && sessions.has(session))
    .map(({ exercise }) => exercise.track);
  return tracks.length === 0 ? null : { session: last.session, tracks: [...new Set(tracks)] };
}

/** What was done when the day was begun is not done again; the rest of it is what is due. */
export function leftOfDay(whole: Prescription, { tracks }: Begun): Prescription {
  const isDone = ({ track }: PrescribedExercise) => tracks.includes(track);
  const names = whole.exercises.filter(isDone).map(({ name }) => name);
  const exercises = whole.exercises.filter((exercise) => !isDone(exercise));
  if (names.length === 0 || exercises.length === 0) return whole;
  const told = because('begun-day', { day: whole.day, names: andText(names) });
  return { ...whole, exercises, warnings: [told, ...whole.warnings] };
}
