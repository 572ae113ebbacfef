import type { Coach } from '../lifter/coach.ts';
import type { Today } from '../lifter/prepare.ts';
import { ruleOf } from '../lifter/rules.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import { loadHandle } from '../training/equipment.ts';
import { barOf, type Gear, type PlateKind } from '../training/gear.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';
import { partnersIn } from '../training/pairing.ts';
import { loadBar } from '../training/plates.ts';
import type { Reason } from '../training/rule.ts';
import type { TodayJson } from './today-schema.ts';

type ExerciseJson = TodayJson['exercises'][number];

/** What `today --json` prints. */
export function todayJson(
  today: Today,
  gear: Gear,
  { reasonWords, expected }: Pick<Coach, 'reasonWords' | 'expected'>,
): TodayJson {
  const { prescription } = today;
  const text = (reason: Reason) => reasonWords(reason).text;
  return {
    schema: 1,
    program: prescription.program,
    day: prescription.day,
    date: prescription.date,
    unit: prescription.unit,
    minutes: today.minutes,
    state: today.state,
    session: today.session,
    lighter: prescription.lighter,
    warnings: prescription.warnings.map((reason) => ({ rule: reason.rule, text: text(reason) })),
    short: prescription.short
      ? {
          minutes: prescription.short.minutes,
          cut: prescription.short.cut.map((reason) => ({
            rule: reason.rule,
            text: text(reason),
            facts: reason.facts,
          })),
        }
      : null,
    exercises: prescription.exercises.map((exercise) =>
      exerciseJson(exercise, prescription, gear, { text, expected: expected(exercise) }),
    ),
  };
}

function exerciseJson(
  exercise: PrescribedExercise,
  { unit, exercises }: Prescription,
  gear: Gear,
  { text, expected }: { text: (reason: Reason) => string; expected: ReturnType<Coach['expected']> },
): ExerciseJson {
  const { load, minis, last, counts, reserve } = exercise;
  const side = load === null ? null : sideFor(exercise, load, gear);
  const bar = exercise.loading === 'barbell' ? barOf(gear, exercise.bar) : undefined;
  const isTimed = counts === 'seconds';
  return {
    lift: exercise.lift,
    name: exercise.name,
    track: exercise.track,
    style: exercise.style,
    load: numberIn(load, unit),
    basis: exercise.basis,
    system: numberIn(exercise.system, unit),
    bar: bar ? { name: bar.name, mass: bar.mass.amount, unit: bar.mass.unit } : null,
    plates: side?.map(({ stamped }) => stamped.amount) ?? null,
    plate_units: side?.map(({ stamped }) => stamped.unit) ?? null,
    per_side: exercise.perSide,
    sets: exercise.sets.map(({ aim, range: [low, high] }, at) => ({
      aim,
      reps: isTimed ? null : [low, high],
      seconds: isTimed ? [low, high] : null,
      reserve: isTimed ? null : [reserve[0], reserve[1]],
      expected: rounded(expected?.[at]?.reps, 10),
      odds: rounded(expected?.[at]?.odds, 100),
    })),
    sets_planned: exercise.setsPlanned,
    cluster: minis && { most_sets: minis.mostSets, rest: exercise.rest, minis_aim: minis.aim },
    rest: exercise.rest,
    in_turn_with: partnersIn(exercises, exercise).map(({ name }) => name),
    test_set: exercise.testSet ?? false,
    warm_up: exercise.warmUp.map((set) => ({
      load: inUnit(set.load, unit),
      reps: set.reps,
      plates: sideFor(exercise, set.load, gear)?.map(({ stamped }) => stamped.amount) ?? null,
    })),
    move: exercise.move,
    why: exercise.why.map((reason) => ({
      rule: reason.rule,
      text: text(reason),
      facts: reason.facts,
      source: ruleOf(reason.rule)?.source ?? '',
    })),
    last: last && {
      date: last.date,
      load: inUnit(last.load, unit),
      loads: (last.loads ?? last.counts.map(() => last.load)).map((load) => inUnit(load, unit)),
      reps: [...last.counts],
      reserve: [...last.reserves],
    },
  };
}

const rounded = (value: number | undefined, parts: number): number | null =>
  value === undefined ? null : Math.round(value * parts) / parts;

const numberIn = (mass: Mass | null, unit: Unit): number | null =>
  mass === null ? null : inUnit(mass, unit);

/** Plates of one side; null where plates do not apply. */
function sideFor(
  { loading, bar, step, hands }: PrescribedExercise,
  load: Mass,
  gear: Gear,
): readonly PlateKind[] | null {
  if (step !== null) return null;
  if (loading === 'barbell') return loadBar(gear, bar, load)?.side ?? null;
  if (loading === 'dumbbell') return loadHandle(gear, hands, load)?.side ?? null;
  return null;
}
