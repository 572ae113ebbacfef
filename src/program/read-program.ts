import type { Lift } from '../training/lift.ts';
import { mass, type Unit } from '../training/mass.ts';
import { buildExercise } from './build-exercise.ts';
import { buildLift } from './build-lift.ts';
import { CATALOGUE } from './catalogue.ts';
import { DEFAULTS } from './defaults.ts';
import type { FileProblem } from './file-problem.ts';
import type { Day, Exercise, Program } from './program.ts';
import { exerciseSchema, headSchema, liftSchema } from './program-schema.ts';
import { type Path, readYaml, type YamlText } from './read-yaml.ts';
import { readPart, valueAt } from './schema-problems.ts';
import type { WrittenMass } from './written-measures.ts';
import { shown, Wrong } from './wrong.ts';
import type { PlacedProblem } from './yaml-traps.ts';

/** A program, or everything that is wrong with the file, in the order of its lines. */
export type ReadProgram =
  | { readonly ok: true; readonly program: Program; readonly warnings: readonly FileProblem[] }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Reads the text of a program file; `file` is what problems call it. Never throws. */
export function readProgram(text: string, file: string): ReadProgram {
  const inFile = (problem: PlacedProblem): FileProblem => ({ ...problem, file });
  const yaml = readYaml(text);
  if ('length' in yaml) return { ok: false, problems: yaml.map(inFile) };
  if (typeof yaml.value !== 'object' || yaml.value === null || Array.isArray(yaml.value)) {
    return { ok: false, problems: [inFile(noProgram(yaml.value))] };
  }
  const head = readPart(headSchema(), yaml, yaml.value);
  const own = readLifts(yaml);
  const unit = valueAt(yaml.value, ['unit']) === 'lb' ? 'lb' : 'kg';
  const { days, problems: dayProblems } = readDays(yaml, own, unit);
  const problems = [...head.problems, ...own.problems, ...dayProblems, ...sameNames(yaml, days)];
  if (!head.value || problems.length > 0) {
    const inOrder = problems.sort((a, b) => a.line - b.line || a.column - b.column);
    return { ok: false, problems: inOrder.map(inFile) };
  }
  const written = head.value;
  const program: Program = {
    name: written.name,
    file,
    unit,
    aim: written.aim ?? DEFAULTS.aim,
    daysPerWeek: written.days_per_week ?? DEFAULTS.daysPerWeek,
    cutFrom: written.cut_from ?? null,
    rate: written.rate ?? DEFAULTS.rate,
    goal: goalOf(written.goal_weight, written.goal_date, unit),
    monthlyCycle: written.monthly_cycle ?? false,
    restBetween: written.rest ?? DEFAULTS.restBetween,
    days,
    lifts: own.lifts,
    accept: written.accept ?? {},
  };
  return { ok: true, program, warnings: yaml.oddNumbers.map(inFile) };
}

const goalOf = (
  weight: WrittenMass | undefined,
  day: string | undefined,
  unit: Unit,
): Program['goal'] => ({
  mass: weight ? mass(weight.amount, weight.unit ?? unit) : null,
  date: day ?? null,
});

function noProgram(found: unknown): PlacedProblem {
  const start = { line: 1, column: 1 };
  return found === null
    ? {
        ...start,
        what: 'There is no program in this file: it is empty.',
        fix: 'Begin with "name: ", "unit: kg" and "days: ", or copy one of the shipped programs.',
      }
    : {
        ...start,
        what: `The file holds ${shown(found)} and no program.`,
        fix: 'Begin with "name: ", "unit: kg" and "days: ", one a line.',
      };
}

/** The catalogue with the program's own lifts on top. */
function readLifts(yaml: YamlText) {
  const lifts = new Map<string, Lift>(CATALOGUE);
  const unread = new Set<string>();
  const problems: PlacedProblem[] = [];
  const own = valueAt(yaml.value, ['lifts']);
  if (typeof own !== 'object' || own === null || Array.isArray(own))
    return { lifts, unread, problems };
  for (const [key, found] of Object.entries(own)) {
    const path = ['lifts', key];
    const read = readPart(liftSchema(), yaml, found, path);
    problems.push(...read.problems);
    const lift = read.value && buildLift(key, read.value, CATALOGUE.get(key) ?? null);
    if (lift instanceof Wrong) {
      problems.push({ ...yaml.placeOfKey(['lifts'], key), what: lift.what, fix: lift.fix });
    }
    if (lift === null || lift instanceof Wrong) unread.add(key);
    else lifts.set(key, lift);
  }
  return { lifts, unread, problems };
}

function readDays(
  yaml: YamlText,
  { lifts, unread }: Pick<ReturnType<typeof readLifts>, 'lifts' | 'unread'>,
  unit: Program['unit'],
) {
  const problems: PlacedProblem[] = [];
  const days = listAt(yaml, ['days']).map((found, day): Day => {
    const path = ['days', day];
    const exercises = listAt(yaml, [...path, 'exercises']).map((written, index) => {
      const here = [...path, 'exercises', index];
      const read = readPart(exerciseSchema(), yaml, written, here);
      problems.push(...read.problems);
      // An exercise is not blamed for a lift of the program's own that could not be read.
      if (!read.value || unread.has(read.value.lift)) return null;
      const built = buildExercise(read.value, lifts, unit, yaml.placeOf(here));
      if (!('length' in built)) return built;
      problems.push(
        ...built.map(({ key, wrong }) => ({
          ...yaml.placeOf([...here, key]),
          what: `${key}: ${wrong.what}`,
          fix: wrong.fix,
        })),
      );
      return null;
    });
    problems.push(...pairProblems(yaml, [...path, 'exercises']));
    return {
      name: String(valueAt(found, ['name']) ?? ''),
      exercises: onTracksOfTheirOwn(exercises.filter((exercise) => exercise !== null)),
      place: yaml.placeOf(path),
    };
  });
  return { days, problems };
}

/**
 * A lift that a day holds twice in one style and range, say a heavy set and lighter ones, goes on
 * by its own results each time: the second has a track of its own.
 */
function onTracksOfTheirOwn(exercises: readonly Exercise[]): readonly Exercise[] {
  const seen = new Map<string, number>();
  return exercises.map((exercise) => {
    const { lift, style, range } = exercise;
    const track = exercise.track ?? range.join('-');
    const kin = `${lift.key} ${style} ${track}`;
    const before = seen.get(kin) ?? 0;
    seen.set(kin, before + 1);
    return before === 0 ? exercise : { ...exercise, track: `${track} (${before + 1})` };
  });
}

const MOST_IN_A_PAIR = 3;

/** Two or three alternate; one that is left alone by an edit is done like any other, and the check tells. */
function pairProblems(yaml: YamlText, path: Path): PlacedProblem[] {
  const pairs = listAt(yaml, path).map((found) => valueAt(found, ['pair']));
  return pairs.flatMap((pair, at) => {
    const before = pairs.slice(0, at).filter((each) => each === pair).length;
    if (typeof pair !== 'string' || before !== MOST_IN_A_PAIR) return [];
    return [
      {
        ...yaml.placeOf([...path, at, 'pair']),
        what: `pair: more than ${MOST_IN_A_PAIR} exercises of the day have ${shown(pair)}; two or three can alternate.`,
        fix: 'Give some of them another word, or none.',
      },
    ];
  });
}

function listAt(yaml: YamlText, path: Path): readonly unknown[] {
  const found = valueAt(yaml.value, path);
  return Array.isArray(found) ? found : [];
}

/** Days are named on the command line and in the history, so no two may share a name. */
function sameNames(yaml: YamlText, days: readonly Day[]): PlacedProblem[] {
  const read = (name: string) => name.trim().toLowerCase();
  return days.flatMap(({ name }, index) => {
    const other = days.findIndex((day) => read(day.name) === read(name));
    if (other === index || name === '') return [];
    return [
      {
        ...yaml.placeOf(['days', index, 'name']),
        what: `name: there is another day ${shown(name)}.`,
        fix: 'Give each day a name of its own.',
      },
    ];
  });
}
