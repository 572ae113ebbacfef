import { Temporal } from 'temporal-polyfill';
import type { Program, Range } from '../../src/program/program.ts';
import type {
  DoneExercise,
  Past,
  Result,
  SessionDone,
  SetResult,
} from '../../src/progression/past.ts';
import type { Move } from '../../src/progression/prescription.ts';
import { basisOf, type Lift } from '../../src/training/lift.ts';
import { kilograms, type Mass } from '../../src/training/mass.ts';

export const day = (text: string): Temporal.PlainDate => Temporal.PlainDate.from(text);

const epoch = (date: Temporal.PlainDate): number =>
  Date.UTC(date.year, date.month - 1, date.day, 17);

/** Invented lifts, enough for every branch. */
export const LIFTS = {
  squat: lift('back-squat', 'Back squat', 'barbell', 'compound', 'squat', {
    quads: 1,
    glutes: 1,
    hamstrings: 0.5,
  }),
  bench: lift('bench-press', 'Bench press', 'barbell', 'compound', 'horizontal-push', {
    chest: 1,
    'front-delts': 0.5,
    triceps: 0.5,
  }),
  row: lift('barbell-row', 'Barbell row', 'barbell', 'compound', 'horizontal-pull', {
    lats: 1,
    'upper-back': 1,
    biceps: 0.5,
  }),
  pullUp: lift('pull-up', 'Pull-up', 'bodyweight', 'compound', 'vertical-pull', {
    lats: 1,
    biceps: 0.5,
  }),
  raise: lift('dumbbell-side-raise', 'Side raise', 'dumbbell', 'isolation', 'shoulder-raise', {
    'side-delts': 1,
  }),
  plank: {
    ...lift('plank', 'Plank', 'bodyweight', 'isolation', 'trunk', { abs: 1 }),
    counts: 'seconds',
  },
} as const satisfies Record<string, Lift>;

function lift(
  key: string,
  name: string,
  loading: Lift['loading'],
  kind: Lift['kind'],
  pattern: Lift['pattern'],
  trains: Lift['trains'],
): Lift {
  const bodyShare = loading === 'bodyweight' ? 1 : null;
  return {
    key,
    name,
    loading,
    kind,
    pattern,
    trains,
    perSide: false,
    counts: 'reps',
    hands: 2,
    bodyShare,
    joints: [],
    needs: [],
    form: null,
    caution: null,
  };
}

export interface MadeResult {
  readonly lift: Lift;
  readonly on: string;
  /** In kg. */
  readonly load: number;
  readonly counts: readonly number[];
  readonly reserve?: number | null;
  readonly range?: Range;
  readonly style?: 'straight' | 'cluster';
  readonly move?: Move;
  readonly asked?: number;
  readonly planned?: number;
  readonly why?: Result['exercise']['why'];
  readonly lighter?: boolean;
  readonly pain?: boolean;
  readonly finished?: boolean;
  readonly session?: string;
}

/** One exercise of one session, as the journal would fold it. */
export function madeResult(made: MadeResult): Result {
  const { lift: of, counts, style = 'straight', range = [5, 8] } = made;
  const load = kilograms(made.load);
  const asked = made.asked ?? counts.length;
  const exercise: DoneExercise = {
    lift: of.key,
    name: of.name,
    loading: of.loading,
    kind: of.kind,
    pattern: of.pattern,
    trains: of.trains,
    perSide: of.perSide,
    counts: of.counts,
    hands: of.hands,
    bodyShare: of.bodyShare,
    track: `${of.key} ${style} ${range[0]}-${range[1]}`,
    style,
    basis: basisOf(of),
    load,
    system: null,
    bar: null,
    step: null,
    range,
    reserve: [1, 2],
    sets: Array.from({ length: style === 'cluster' ? 1 : asked }, () => ({ aim: range[0], range })),
    setsPlanned: made.planned ?? asked,
    minis: style === 'cluster' ? { mostSets: asked, aim: 4 } : null,
    rest: { from: 180, to: 300 },
    move: made.move ?? 'hold',
    why: made.why ?? [],
    note: null,
    form: null,
    caution: null,
  };
  const reserve = made.reserve === undefined ? 1 : made.reserve;
  const sets: SetResult[] = counts.map((count, at) => ({
    id: `set:${at}`,
    load,
    count,
    reserve,
    entered: 'typed',
  }));
  const date = day(made.on);
  return {
    session: made.session ?? `s-${made.on}`,
    start: epoch(date),
    date,
    program: 'Lean spring',
    day: 'A',
    exercise,
    sets,
    finished: made.finished ?? counts.length >= asked,
    pain: made.pain ?? false,
    lighter: made.lighter ?? false,
  };
}

export const madeSession = (on: string, more: Partial<SessionDone> = {}): SessionDone => ({
  session: `s-${on}`,
  start: epoch(day(on)),
  end: epoch(day(on)) + 3_600_000,
  date: day(on),
  program: 'Lean spring',
  day: 'A',
  aim: 'cut',
  setsPlanned: 6,
  setsDone: 6,
  how: 'closed',
  unit: 'kg',
  foreign: false,
  ...more,
});

/** A past of these results, a session for each date, and a body weight in kg that may change with the date. */
export function madePast(
  results: readonly Result[],
  body: ((date: Temporal.PlainDate) => number) | null = () => 80,
  more: Partial<Past> = {},
): Past {
  const dates = [...new Set(results.map(({ date }) => date.toString()))].sort();
  return {
    results: [...results].sort((a, b) => a.start - b.start),
    sessions: dates.map((date) => madeSession(date)),
    decisions: [],
    bodyMassOn: (date): Mass | null => (body === null ? null : kilograms(body(date))),
    ...more,
  };
}

/** Every so many days from a date on, as `2026-09-07`. */
export const every = (days: number, from: string, count: number): string[] =>
  Array.from({ length: count }, (_, at) =>
    day(from)
      .add({ days: at * days })
      .toString(),
  );

export interface MadeExercise {
  readonly lift: Lift;
  readonly sets: number;
  readonly range?: Range;
  readonly cluster?: boolean;
}

/** A program of one day repeated three times a week, unless told otherwise. */
export function madeProgram(
  exercises: readonly MadeExercise[],
  more: Partial<Program> = {},
): Program {
  const place = { line: 1, column: 1 };
  const made = exercises.map(({ lift: of, sets, range = [5, 8], cluster = false }) => {
    const base = {
      lift: of,
      reserve: [1, 2] as const,
      start: null,
      bar: null,
      step: null,
      track: null,
      warmUp: true,
      note: null,
      accept: {},
      place,
      range,
    };
    return cluster
      ? ({ ...base, style: 'cluster', rest: { from: 10, to: 15 }, mostSets: sets } as const)
      : ({ ...base, style: 'straight', rest: { from: 180, to: 300 }, sets } as const);
  });
  return {
    name: 'Lean spring',
    file: 'lean-spring.yaml',
    unit: 'kg',
    aim: 'cut',
    daysPerWeek: 3,
    cutFrom: null,
    rate: [0.5, 1],
    goal: { mass: null, date: null },
    monthlyCycle: false,
    restBetween: { from: 120, to: 180 },
    days: [{ name: 'A', exercises: made, place }],
    lifts: new Map(exercises.map(({ lift: of }) => [of.key, of])),
    accept: {},
    ...more,
  };
}
