import type { Gear } from '../../training/gear.ts';
import { programFigures } from '../check/figures.ts';
import { EXERCISE_RULES } from '../check/rules/exercises.ts';
import { GEAR_RULES } from '../check/rules/gear.ts';
import type { Exercise, Program } from '../program.ts';

/** Keys of the rules about exercises and gear that a single exercise does not keep. */
export function faultsOf(exercise: Exercise, gear: Gear): readonly string[] {
  const program: Program = {
    name: '',
    file: '',
    unit: gear.unit,
    aim: 'cut',
    daysPerWeek: 1,
    cutFrom: null,
    rate: [0.5, 1],
    monthlyCycle: false,
    restBetween: exercise.rest,
    days: [{ name: '', exercises: [exercise], place: exercise.place }],
    lifts: new Map(),
    accept: {},
  };
  const checked = {
    program,
    gear,
    figures: programFigures(program),
    exercises: [{ exercise, day: '' }],
    perWeek: 1,
    known: [],
  };
  return [...EXERCISE_RULES, ...GEAR_RULES]
    .filter((rule) => rule.find(checked).length > 0)
    .map(({ key }) => key);
}
