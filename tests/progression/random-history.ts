import fc from 'fast-check';
import type { Aim, Exercise, Program } from '../../src/program/program.ts';
import type { Past, Result, SetResult } from '../../src/progression/past.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import type { Gear } from '../../src/training/gear.ts';
import { kilograms, type Mass } from '../../src/training/mass.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aLift, aProgram, cluster, plank, pullUp, sideRaise, straight } from './a-program.ts';

/** How many random histories a property is tried on: `HISTORIES=10000` for a long run. */
export const HISTORIES = Number(process.env.HISTORIES ?? 400);

const EXERCISES: readonly Exercise[] = [
  straight(),
  straight({ range: [4, 6], sets: 4, reserve: [1, 1] }),
  straight({ lift: aLift({ key: 'press', loading: 'dumbbell' }), range: [8, 12] }),
  straight({ lift: aLift({ key: 'bench', pattern: 'horizontal-push' }), reserve: [0, 1] }),
  straight({ lift: pullUp, range: [6, 10] }),
  straight({ lift: plank, range: [30, 60], reserve: [0, 1] }),
  straight({ lift: sideRaise, range: [10, 15], sets: 2 }),
  cluster(),
];

const GEARS: readonly Gear[] = [
  aGear(),
  aGear({ dumbbells: dumbbells(4, 6, 8, 10, 12, 14, 16, 20, 24), safeties: false }),
  aGear({ dumbbells: dumbbells(5, 7.5, 10, 15, 22.5), belt: false }),
];

interface Session {
  /** Reps beside the aim, a set. */
  readonly beside: readonly number[];
  readonly reserve: number | null;
  readonly gap: number;
  readonly entered: SetResult['entered'];
  readonly ends: 'whole' | 'unfinished' | 'pain' | 'other-load' | 'lighter';
}

const session: fc.Arbitrary<Session> = fc.record({
  beside: fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 5, maxLength: 5 }),
  reserve: fc.option(fc.integer({ min: 0, max: 7 }), { freq: 3 }),
  gap: fc.oneof(
    { weight: 12, arbitrary: fc.integer({ min: 2, max: 5 }) },
    { weight: 1, arbitrary: fc.constantFrom(15, 16, 30, 90, 200) },
  ),
  entered: fc.constantFrom('typed', 'typed', 'confirmed', 'as-planned'),
  ends: fc.oneof(
    { weight: 12, arbitrary: fc.constant('whole' as const) },
    { weight: 1, arbitrary: fc.constantFrom('unfinished', 'pain', 'other-load', 'lighter') },
  ),
});

/** One step of a history: what the past was, what was prescribed then. */
export interface Step {
  readonly program: Program;
  readonly exercise: Exercise;
  readonly gear: Gear;
  readonly past: Past;
  readonly today: typeof TODAY;
  readonly prescribed: PrescribedExercise;
}

/** A lifter, an exercise, gear, and sessions done more or less as prescribed each time. */
export const histories = fc.record({
  exercise: fc.integer({ min: 0, max: EXERCISES.length - 1 }),
  gear: fc.integer({ min: 0, max: GEARS.length - 1 }),
  /** What is owned after ten sessions. */
  laterGear: fc.integer({ min: 0, max: GEARS.length - 1 }),
  aim: fc.constantFrom<Aim>('cut', 'cut', 'maintain', 'build'),
  start: fc.integer({ min: 4, max: 60 }),
  body: fc.constantFrom(70, 90, null),
  sessions: fc.array(session, { minLength: 1, maxLength: 24 }),
});
export type History = typeof histories extends fc.Arbitrary<infer T> ? T : never;

/** Plays a history, and gives every step of it. */
export function stepsOf({ start, body, sessions, ...given }: History): readonly Step[] {
  const planned = EXERCISES[given.exercise] ?? straight();
  const free = planned.lift.loading === 'bodyweight';
  const exercise = { ...planned, start: free ? null : kilograms(start) };
  const program = aProgram([exercise], { aim: given.aim });
  const bodyOn =
    body === null
      ? null
      : (date: typeof TODAY) => body + date.until(TODAY, { largestUnit: 'days' }).days / 50;
  const results: Result[] = [];
  const steps: Step[] = [];
  let daysAgo = sessions.reduce((sum, { gap }) => sum + gap, 0);
  for (const [at, each] of sessions.entries()) {
    const gear = GEARS[at < 10 ? given.gear : given.laterGear] ?? aGear();
    const today = TODAY.subtract({ days: daysAgo });
    const past = aPast(results, { body: bodyOn });
    const prescribed = prescribeExercise(program, exercise, past, { today, gear });
    steps.push({ program, exercise, gear, past, today, prescribed });
    results.push(doneAs(exercise, prescribed, each, daysAgo));
    daysAgo -= each.gap;
  }
  return steps;
}

function doneAs(
  exercise: Exercise,
  prescribed: PrescribedExercise,
  { beside, reserve, entered, ends }: Session,
  daysAgo: number,
): Result {
  const load = prescribed.load ?? kilograms(20);
  const worth = prescribed.counts === 'seconds' ? 5 : 1;
  const minis = prescribed.minis
    ? Array(prescribed.minis.mostSets - 1).fill(prescribed.minis.aim)
    : [];
  const aims: readonly number[] = [...prescribed.sets.map(({ aim }) => aim), ...minis];
  const wanted = ends === 'unfinished' ? aims.slice(0, Math.max(1, aims.length - 1)) : aims;
  const sets = wanted.map((aim, at): SetResult => {
    const other = ends === 'other-load' && at > 0 ? -2_500_000_000 : 0;
    return {
      id: `made:${at}`,
      load: (load + other) as Mass,
      count: Math.max(0, aim + worth * (beside[at % beside.length] ?? 0)),
      reserve: prescribed.counts === 'seconds' ? null : reserve,
      entered,
    };
  });
  const blank = aResult(exercise, { kg: 1, reps: [1], daysAgo }, prescribed);
  return {
    ...blank,
    sets,
    finished: ends !== 'unfinished' && ends !== 'pain',
    pain: ends === 'pain',
    lighter: ends === 'lighter',
  };
}
