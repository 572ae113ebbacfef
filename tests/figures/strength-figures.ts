import { Temporal } from 'temporal-polyfill';
import { evidenceOf } from '../../src/cut/evidence.ts';
import { readProgram } from '../../src/program/read-program.ts';
import type { Past, Result, SessionDone } from '../../src/progression/past.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import { type SeededRandom, seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import {
  COURSES,
  type Course,
  type MadeLifter,
  moodyLifter,
  plainLifter,
  unevenLifter,
  waywardLifter,
} from './made-lifter.ts';

const FROM = Temporal.PlainDate.from('2026-01-05');
const WEEKS = 16;
const DAY_MS = 86_400_000;

const read = readProgram(
  `name: Measured
unit: kg
aim: cut
days_per_week: 3
days:
  - name: A
    exercises:
      - { lift: back-squat, sets: 3, reps: 5-8, rest: 3-4 min, start: 78 }
      - { lift: bench-press, sets: 3, reps: 5-8, rest: 3-4 min, start: 78 }
      - { lift: lat-pulldown, sets: 3, reps: 6-10, rest: 3-4 min, start: 75 }
  - name: B
    exercises:
      - { lift: romanian-deadlift, sets: 3, reps: 5-8, rest: 3-4 min, start: 78 }
      - { lift: overhead-press, sets: 3, reps: 5-8, rest: 3-4 min, start: 78 }
      - { lift: barbell-row, sets: 3, reps: 6-10, rest: 3-4 min, start: 75 }
`,
  'measured.yaml',
);
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const { program } = read;
const gear = { ...defaultGear('kg'), safeties: true };

/** What was told of one lift of one lifter. */
interface Told {
  readonly course: Course;
  /** Kept after the last week − truth, in points. */
  readonly error: number | null;
  /** Was the truth in the 90 % interval? Null where none is told. */
  readonly inside: boolean | null;
  readonly width: number | null;
  /** Days from the day on which truly 5 % were lost until slipping was told; null: never; absent: never lost. */
  readonly delay?: number | null;
}

interface Played {
  readonly lifts: readonly Told[];
  /** Was any lift ever said to slip? */
  readonly cried: boolean;
  /** Or all lifts together? */
  readonly criedAny: boolean;
  readonly criedTogether: boolean;
  readonly drops: number;
  /** As {@link Told.delay}, for all lifts together. */
  readonly delayTogether?: number | null;
  /** Load ÷ what is right for the middle of the range with two left, settled sessions. */
  readonly loads: readonly number[];
}

const KINDS: Readonly<Record<string, (course: Course, random: SeededRandom) => MadeLifter>> = {
  plain: plainLifter,
  moody: moodyLifter,
  wayward: waywardLifter,
  uneven: unevenLifter,
};

/** A made lifter trains sixteen weeks of a cut by what the program prescribes. */
function play(kind: string, course: Course, seed: number, takesTests: boolean): Played {
  const lifter = (KINDS[kind] ?? plainLifter)(course, seededRandom(seed));
  const results: Result[] = [];
  const sessions: SessionDone[] = [];
  const past = (): Past => ({
    results: [...results],
    sessions: [...sessions],
    decisions: [],
    bodyMassOn: () => kilograms(80),
  });
  const told = new Map<string, number>();
  let together: number | null = null;
  let drops = 0;
  const loads: number[] = [];
  let trained = 0;
  for (let day = 0; day < WEEKS * 7; day += 1) {
    if (![0, 2, 4].includes(day % 7)) continue;
    const today = FROM.add({ days: day });
    const due = program.days[trained % program.days.length];
    if (!due) throw new Error('The program has no day.');
    trained += 1;
    const prescription = prescribe(program, due, past(), { today, gear });
    const start = today.toZonedDateTime('UTC').epochMilliseconds + DAY_MS / 2;
    const session = `s${day}`;
    for (const exercise of prescription.exercises) {
      const load = exercise.load;
      if (load === null) throw new Error(`${exercise.lift} has no load`);
      if (exercise.sets.length < exercise.setsPlanned) drops += 1;
      const middle = (exercise.range[0] + exercise.range[1]) / 2 + 2;
      if (day > 28) {
        loads.push(load / 1e9 / (lifter.strength(exercise.lift, day) * ((37 - middle) / 36)));
      }
      const sets = exercise.sets.map(({ aim }, done) => {
        const { reps, reserve, failed } = lifter.set({
          fails: takesTests && exercise.testSet === true && done === exercise.sets.length - 1,
          lift: exercise.lift,
          day,
          load: load / 1e9,
          aim,
          leave: exercise.reserve[0],
          done,
        });
        return {
          id: `${exercise.lift} ${done}`,
          load,
          count: reps,
          reserve,
          ...(failed && { failed }),
          entered: 'typed' as const,
        };
      });
      results.push({
        session,
        start,
        date: today,
        program: program.name,
        day: prescription.day,
        exercise,
        sets,
        finished: true,
        pain: false,
        lighter: prescription.lighter,
      });
    }
    sessions.push({
      session,
      start,
      end: start + 3_600_000,
      date: today,
      program: program.name,
      day: prescription.day,
      aim: 'cut',
      setsPlanned: 9,
      setsDone: 9,
      how: 'closed',
      unit: 'kg',
      foreign: false,
    });
    const evidence = evidenceOf({ program, past: past(), weighIns: [], today, weightAdvice: true });
    for (const { exercise, slip } of evidence.exercises) {
      const { key } = exercise.lift;
      if (slip && !told.has(key)) told.set(key, day);
    }
    if (together === null && losesTogether(evidence)) together = day;
  }
  const strengthLeft = (lift: string) => (day: number) =>
    lifter.strength(lift, day) / lifter.strength(lift, 0);
  const keys = program.days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift.key));
  const lostTogether = firstDayUnder(0.95, (day) =>
    mean(keys.map((key) => strengthLeft(key)(day))),
  );
  const last = FROM.add({ days: WEEKS * 7 });
  const { lifts } = evidenceOf({
    program,
    past: past(),
    weighIns: [],
    today: last,
    weightAdvice: true,
  });
  return {
    lifts: lifts.map((lift): Told => {
      const known = lift.state === 'known' ? lift : null;
      const truth = strengthLeft(lift.lift)(WEEKS * 7) * 100;
      const lost = firstDayUnder(0.95, strengthLeft(lift.lift));
      const [low, high] = intervalOf(known);
      return {
        course,
        error: known && known.share * 100 - truth,
        inside: low === null || high === null ? null : low * 100 <= truth && truth <= high * 100,
        width: low === null || high === null ? null : ((high - low) * 100) / 2,
        ...(lost === null ? {} : { delay: after(told.get(lift.lift) ?? null, lost) }),
      };
    }),
    cried: told.size > 0,
    criedTogether: together !== null,
    criedAny: told.size > 0 || together !== null,
    drops,
    ...(lostTogether === null ? {} : { delayTogether: after(together, lostTogether) }),
    loads,
  };
}

const after = (day: number | null, lost: number) => (day === null ? null : day - lost);

function firstDayUnder(share: number, left: (day: number) => number): number | null {
  for (let day = 0; day < WEEKS * 7; day += 1) {
    if (left(day) <= share) return day;
  }
  return null;
}

function intervalOf(known: object | null): [number | null, number | null] {
  const { low, high } = (known ?? {}) as { low?: number; high?: number };
  return [low ?? null, high ?? null];
}

function losesTogether(evidence: object): boolean {
  return Boolean((evidence as { together?: unknown }).together);
}

const say = (line: string) => process.stdout.write(`${line}\n`);

/** The table, for each kind of lifter and course. */
export function strengthFigures(lifters: number, takesTests = false, firstSeed = 1): void {
  for (const kind of Object.keys(KINDS)) {
    say(
      `\nStrength kept after ${WEEKS} weeks, ${lifters} ${kind} lifters a course, six lifts, test sets ${takesTests ? 'taken' : 'left out'}`,
    );
    say(
      '  course          error sd   bias  inside 90 %  ± width  told of slipping  sets dropped  half/90 % told after (days)  all together  loads mean, sd',
    );
    for (const course of Object.keys(COURSES) as Course[]) {
      const played = Array.from({ length: lifters }, (_, i) =>
        play(kind, course, firstSeed + i, takesTests),
      );
      say(`  ${rowOf(course, played)}`);
    }
  }
}

function rowOf(course: Course, played: readonly Played[]): string {
  const lifts = played.flatMap((each) => each.lifts);
  const errors = lifts.flatMap(({ error }) => (error === null ? [] : [error]));
  const inside = lifts.flatMap((each) => (each.inside === null ? [] : [each.inside]));
  const widths = lifts.flatMap(({ width }) => (width === null ? [] : [width]));
  const loads = played.flatMap((each) => each.loads);
  const delays = lifts.flatMap(({ delay }) => (delay === undefined ? [] : [delay ?? Infinity]));
  const all = played.flatMap(({ delayTogether: delay }) =>
    delay === undefined ? [] : [delay ?? Infinity],
  );
  const count = (is: (each: Played) => boolean) => played.filter(is).length;
  const number = (value: number, digits = 1) => value.toFixed(digits);
  const of = (list: readonly number[]) =>
    list.length === 0 ? '–' : `${quantile(list, 0.5)}/${quantile(list, 0.9)}`;
  return [
    course.padEnd(14),
    number(spread(errors), 2).padStart(8),
    number(mean(errors), 2).padStart(6),
    (inside.length === 0 ? '–' : `${number(mean(inside.map(Number)) * 100, 0)} %`).padStart(12),
    number(mean(widths)).padStart(8),
    `${count(({ cried }) => cried)}, ${count(({ criedTogether }) => criedTogether)}, ${count(({ criedAny }) => criedAny)} of ${played.length}`.padStart(
      17,
    ),
    number(mean(played.map(({ drops }) => drops))).padStart(13),
    of(delays).padStart(28),
    of(all).padStart(13),
    `${number(mean(loads) * 100 - 100)} %, ${number(spread(loads) * 100)} %`.padStart(15),
  ].join(' ');
}

const mean = (list: readonly number[]) =>
  list.reduce((sum, value) => sum + value, 0) / Math.max(1, list.length);

function spread(list: readonly number[]): number {
  const centre = mean(list);
  return Math.sqrt(mean(list.map((value) => (value - centre) ** 2)));
}

const quantile = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.ceil(list.length * share) - 1] ?? 0;
