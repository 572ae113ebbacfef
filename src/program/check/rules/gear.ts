import { andText } from '../../../text/words.ts';
import { type Gear, hasStation } from '../../../training/gear.ts';
import { isUnderTheBar } from '../../../training/lift.ts';
import { isLoadable } from '../../../training/loads.ts';
import { type Mass, massText } from '../../../training/mass.ts';
import type { Exercise } from '../../program.ts';
import { at, type Checked, type CheckRule } from '../check-rule.ts';
import { coarseStep, loadableStart, loadsOf, nextLoad, smallPlates } from '../coarse-step.ts';

const OURS = 'ours';

/** Rules about what the lifter owns. */
export const GEAR_RULES = [
  {
    key: 'no-gear',
    standing: 'ours',
    source: OURS,
    sentence: ({ lift, missing }) => `${lift} needs ${missing}, and your gear has none.`,
    find: ({ exercises, gear }) =>
      exercises.flatMap(({ exercise }) => {
        const missing = missingFor(exercise, gear);
        if (missing === null) return [];
        // Machines are often those of a gym, and go by a plain step until they are described.
        const severity = exercise.lift.loading === 'stack' ? 'advice' : 'error';
        // A step stands in for what loads a lift, never for the place where it is done.
        const step = stationMissing(exercise, gear) ? '' : ' write a step for the exercise,';
        const fix = `Add ${missing} to your gear,${step} or choose another lift.`;
        return [at(exercise, severity, { missing }, fix)];
      }),
  },
  {
    key: 'no-such-bar',
    standing: 'ours',
    source: OURS,
    sentence: ({ lift, bar }) =>
      `${lift} asks for the bar "${bar}", which your gear does not have.`,
    find: ({ exercises, gear }) =>
      exercises
        .filter(
          ({ exercise: { bar } }) => bar !== null && !gear.bars.some(({ name }) => name === bar),
        )
        .map(({ exercise }) => {
          const owned = gear.bars.map(({ name }) => `"${name}"`);
          const fix = owned.length > 0 ? `You have ${andText(owned)}.` : 'Add it to your gear.';
          return at(exercise, 'error', { bar: exercise.bar }, fix);
        }),
  },
  {
    key: 'unloadable-start',
    standing: 'ours',
    source: OURS,
    sentence: ({ lift, start, instead }, unit) =>
      `${lift} starts at ${massText(Number(start) as Mass, unit)}, which your gear cannot make: ${massText(Number(instead) as Mass, unit)} is used.`,
    find: ({ exercises, gear, program: { unit } }) =>
      loaded(exercises, gear).flatMap(({ exercise }) => {
        const { start } = exercise;
        const loads = loadsOf(exercise, gear);
        if (start === null || isLoadable(loads, start)) return [];
        const below = loads.atOrBelow(start);
        const above = loads.atOrAbove(start);
        const near = [below, above].filter((mass) => mass !== null);
        const fix = `Write start: ${near.map((mass) => massText(mass, unit)).join(' or ')}.`;
        return [at(exercise, 'advice', { start, instead: below ?? loads.lightest }, fix)];
      }),
  },
  {
    key: 'coarse-step',
    standing: 'ours',
    source:
      'steps of 2–10 %: ACSM 2009, MSSE 41(3):687–708; reps reached for before a larger one: ours',
    sentence: ({ lift, start, next, share, reps }, unit) =>
      `For ${lift} the next load after ${massText(Number(start) as Mass, unit)} is ${massText(Number(next) as Mass, unit)}, ${share} % more: even ${reps} reps would not be enough to go there.`,
    find: ({ exercises, gear, program: { unit } }) =>
      loaded(exercises, gear).flatMap(({ exercise }) => {
        const step = coarseStep(exercise, gear);
        if (!step) return [];
        const plates = smallPlates(exercise, gear);
        const fix = plates
          ? `Small plates of ${plates.stamped.amount} ${plates.stamped.unit} (${plates.count} of them) make steps that can be taken; bands do, too.`
          : `${exercise.lift.loading === 'band' ? 'A band' : 'Dumbbells or plates'} for a load between ${massText(step.start, unit)} and ${massText(step.next, unit)} would mend it, or a lift that takes more load.`;
        return [at(exercise, 'advice', { ...step }, fix)];
      }),
  },
  {
    key: 'no-heavier-load',
    standing: 'ours',
    source: OURS,
    sentence: ({ lift, start }, unit) =>
      `${lift} starts at ${massText(Number(start) as Mass, unit)}, the heaviest that your gear can make.`,
    find: ({ exercises, gear }) =>
      loaded(exercises, gear).flatMap(({ exercise }) => {
        const start = loadableStart(exercise, gear);
        if (start === null || start <= 0 || nextLoad(exercise, gear, start) !== null) return [];
        const fix = 'Choose a harder lift for the same muscles, or get more plates.';
        return [at(exercise, 'advice', { start }, fix)];
      }),
  },
  {
    key: 'safeties',
    standing: 'common practice',
    source: 'common practice; deaths at the bench press happen to people lifting alone',
    sentence: ({ lift }) => `${lift} can pin you under the bar, and your gear lists no safeties.`,
    find: ({ exercises, gear }) =>
      gear.safeties ? [] : exercises.filter(isPinned).map(({ exercise }) => unsafe(exercise)),
  },
] as const satisfies readonly CheckRule[];

type Placed = Checked['exercises'][number];

/** Without what no load can be made there is nothing to say of loads. */
const loaded = (exercises: readonly Placed[], gear: Gear): readonly Placed[] =>
  exercises.filter(
    ({ exercise }) => exercise.lift.loading === 'stack' || missingFor(exercise, gear) === null,
  );

const isPinned = ({ exercise }: Placed): boolean => isUnderTheBar(exercise.lift);

const unsafe = (exercise: Exercise) =>
  at(
    exercise,
    'advice',
    {},
    'Set safeties and say so in your gear, or choose a lift with dumbbells; until then no set goes to failure.',
  );

const stationMissing = ({ lift }: Pick<Exercise, 'lift'>, gear: Gear) =>
  lift.needs.find((each) => !hasStation(gear, each));

/** What the gear lacks to load an exercise, in words; null where it has all. */
export function missingFor(
  { lift, step }: Pick<Exercise, 'lift' | 'step'>,
  gear: Gear,
): string | null {
  const station = stationMissing({ lift }, gear);
  if (station) return `a ${station}`;
  if (step !== null) return null;
  switch (lift.loading) {
    case 'barbell':
      return gear.bars.length > 0 ? null : 'a bar';
    case 'dumbbell':
      return [...gear.dumbbells, ...gear.handles].some(({ count }) => count >= lift.hands)
        ? null
        : lift.hands === 2
          ? 'a pair of dumbbells'
          : 'a dumbbell';
    case 'stack':
      return gear.stacks.length > 0 ? null : 'a machine';
    case 'band':
      return gear.bands.length > 0 ? null : 'a band';
    case 'bodyweight':
    case 'free':
      return null;
  }
}
