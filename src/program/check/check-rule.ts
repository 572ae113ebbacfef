import type { Gear } from '../../training/gear.ts';
import type { Facts, Rule } from '../../training/rule.ts';
import type { Exercise, Place, Program } from '../program.ts';
import type { ProgramFigures } from './figures.ts';

/** What a rule looks at. */
export interface Checked {
  readonly program: Program;
  readonly gear: Gear;
  readonly figures: ProgramFigures;
  /** Every exercise with the day it stands in, in the order of the file. */
  readonly exercises: readonly { readonly exercise: Exercise; readonly day: string }[];
  /** How often each day comes up in the average week. */
  readonly perWeek: number;
  /** Keys of all rules. */
  readonly known: readonly string[];
}

/** One place where a program does not keep a rule. */
export interface Found {
  /** An error says no to the program as it stands; advice only has a better idea. */
  readonly severity: 'error' | 'advice';
  /** Where the file can be mended; null for the file as a whole. */
  readonly place: Place | null;
  /** The exercise that it concerns, whose own `accept` counts too. */
  readonly exercise?: Exercise;
  readonly facts: Facts;
  /** What would mend it, one sentence. */
  readonly fix: string;
}

/** A rule of a good program: a rule as data, and the function that finds where it is not kept. */
export interface CheckRule<Key extends string = string> extends Rule<Key> {
  readonly find: (checked: Checked) => readonly Found[];
}

/** A finding at an exercise. */
export const at = (
  exercise: Exercise,
  severity: Found['severity'],
  facts: Facts,
  fix: string,
): Found => ({
  severity,
  place: exercise.place,
  exercise,
  facts: { lift: exercise.lift.name, ...facts },
  fix,
});
