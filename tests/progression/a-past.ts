import { Temporal } from 'temporal-polyfill';
import type { Exercise } from '../../src/program/program.ts';
import type { Entered, Past, Result, SessionDone } from '../../src/progression/past.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import type { Move, PrescribedExercise } from '../../src/progression/prescription.ts';
import { kilograms, type Mass } from '../../src/training/mass.ts';
import { aGear } from './a-gear.ts';
import { aProgram } from './a-program.ts';

export const TODAY = Temporal.PlainDate.from('2026-11-25');

/** One session of one exercise, as a test writes it down. */
export interface Trained {
  /** One load for all sets, or one a set. */
  readonly kg: number | readonly number[];
  readonly reps: readonly number[];
  /** One for all sets, or one a set; left out: the lifter gave none. */
  readonly rir?: number | readonly (number | null)[];
  readonly daysAgo: number;
  readonly move?: Move;
  /** Rules that the prescription of that day gave as its reasons. */
  readonly why?: readonly string[];
  readonly pain?: boolean;
  readonly unfinished?: boolean;
  readonly entered?: Entered;
  readonly lighter?: boolean;
}

export function aResult(
  exercise: Exercise,
  trained: Trained,
  prescribed?: PrescribedExercise,
): Result {
  const date = TODAY.subtract({ days: trained.daysAgo });
  const blank = prescribeExercise(aProgram([exercise]), exercise, aPast([]), {
    today: date,
    gear: aGear(),
  });
  const loads = trained.reps.map((_, at) => kilograms(at_(trained.kg, at) ?? 0));
  return {
    session: `session-${date.toString()}`,
    start: date.toZonedDateTime('UTC').epochMilliseconds,
    date,
    program: 'Invented',
    day: 'A',
    exercise: prescribed ?? {
      ...blank,
      load: loads[0] ?? null,
      move: trained.move ?? 'hold',
      why: (trained.why ?? []).map((rule) => ({ rule })),
    },
    sets: trained.reps.map((count, at) => ({
      id: `made:${at}`,
      load: loads[at] ?? kilograms(0),
      count,
      reserve: at_(trained.rir, at) ?? null,
      entered: trained.entered ?? 'typed',
    })),
    finished: !trained.unfinished,
    pain: trained.pain ?? false,
    lighter: trained.lighter ?? false,
  };
}

function at_<T>(given: T | readonly T[] | undefined, at: number): T | undefined {
  return Array.isArray(given) ? given[at] : (given as T | undefined);
}

export function aSession(result: Result, changes: Partial<SessionDone> = {}): SessionDone {
  return {
    session: result.session,
    start: result.start,
    end: result.start + 3_600_000,
    date: result.date,
    program: result.program,
    day: result.day,
    setsPlanned: result.exercise.sets.length,
    setsDone: result.sets.length,
    how: 'closed',
    unit: 'kg',
    foreign: false,
    ...changes,
  };
}

/** A past of these results; body weight in kg, steady, or by day. */
export function aPast(
  results: readonly Result[],
  {
    body = 80,
    ...changes
  }: Partial<Omit<Past, 'bodyMassOn'>> & {
    readonly body?: number | null | ((date: Temporal.PlainDate) => number);
  } = {},
): Past {
  const ordered = [...results].sort((a, b) => a.start - b.start);
  return {
    results: ordered,
    sessions: ordered.map((result) => aSession(result)),
    decisions: [],
    bodyMassOn: (date): Mass | null => {
      if (body === null) return null;
      return kilograms(typeof body === 'function' ? body(date) : body);
    },
    ...changes,
  };
}

/** What an exercise was trained with so far. */
export const trained = (exercise: Exercise, ...sessions: readonly Trained[]): readonly Result[] =>
  sessions.map((session) => aResult(exercise, session));
