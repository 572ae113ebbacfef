import type { Exercise, Program } from '../../src/program/program.ts';
import type { Past, Result } from '../../src/progression/past.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import { progressionRules } from '../../src/progression/rules/progression-rules.ts';
import type { Gear } from '../../src/training/gear.ts';
import { inUnit, kilograms } from '../../src/training/mass.ts';
import { aGear } from './a-gear.ts';
import { aPast, aResult, TODAY, type Trained } from './a-past.ts';
import { aProgram } from './a-program.ts';

interface Around {
  readonly past?: Past;
  readonly gear?: Gear;
  readonly program?: Partial<Program>;
}

/** What an exercise is prescribed today after these sessions. */
export function nextTime(
  exercise: Exercise,
  sessions: readonly Trained[],
  { past, gear = aGear(), program = {} }: Around = {},
): Told {
  const results = sessions.map((session) => aResult(exercise, session));
  return tellOf(
    prescribeExercise(aProgram([exercise], program), exercise, past ?? aPast(results), {
      today: TODAY,
      gear,
    }),
  );
}

/** A prescription in the words of a test: kg, aims, rules. */
export interface Told {
  readonly move: string;
  readonly kg: number | null;
  readonly aims: readonly number[];
  readonly rules: readonly string[];
  readonly words: readonly string[];
  readonly prescribed: PrescribedExercise;
}

export function tellOf(prescribed: PrescribedExercise): Told {
  return {
    move: prescribed.move,
    kg: prescribed.load === null ? null : inUnit(prescribed.load, 'kg'),
    aims: prescribed.sets.map(({ aim }) => aim),
    rules: prescribed.why.map(({ rule }) => rule),
    words: prescribed.why.map((reason) => {
      const rule = progressionRules.find(({ key }) => key === reason.rule);
      if (!rule) throw new Error(`No rule is called ${reason.rule}.`);
      return rule.sentence(reason.facts, 'kg');
    }),
    prescribed,
  };
}

/** Reps of each session in turn, and the reserve where it is rated. */
export interface Played {
  readonly reps: readonly number[];
  readonly rir?: number;
  /** Days until the next session; 3 where left out. */
  readonly gap?: number;
}

/**
 * Plays sessions one after another, each at the load that the rules gave, and tells what each was
 * prescribed; the last one is what comes after them all.
 */
export function play(
  exercise: Exercise,
  first: number,
  sessions: readonly Played[],
  { gear = aGear(), program = {} }: Omit<Around, 'past'> = {},
): readonly Told[] {
  const started = { ...exercise, start: kilograms(first) };
  const results: Result[] = [];
  const told: Told[] = [];
  let daysAgo = sessions.reduce((sum, { gap = 3 }) => sum + gap, 0);
  for (const { reps, rir, gap = 3 } of sessions) {
    const today = TODAY.subtract({ days: daysAgo });
    const prescribed = prescribeExercise(aProgram([started], program), started, aPast(results), {
      today,
      gear,
    });
    told.push(tellOf(prescribed));
    const kg = prescribed.load === null ? first : inUnit(prescribed.load, 'kg');
    const done = reps.slice(0, prescribed.sets.length);
    results.push(
      aResult(
        started,
        { kg, reps: done, daysAgo, ...(rir === undefined ? {} : { rir }) },
        prescribed,
      ),
    );
    daysAgo -= gap;
  }
  const last = prescribeExercise(aProgram([started], program), started, aPast(results), {
    today: TODAY,
    gear,
  });
  return [...told, tellOf(last)];
}
