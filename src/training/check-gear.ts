import type { Problem } from '../text/problem.ts';
import { GEAR_LIMITS, type Gear, type PlateKind, type Stack } from './gear.ts';
import { massOf, type Quantity, quantityText } from './mass.ts';

/** A measured plate further than this share from its stamp was weighed or written wrong. Ours. */
const MOST_OFF = 0.1;

/** What cannot be right in a list of gear: one problem each, none when all is well. */
export function gearProblems(gear: Gear): Problem[] {
  return [
    ...kindProblems(gear),
    ...massProblems(gear),
    ...gear.plates.flatMap(measuredProblems),
    ...countProblems(gear),
    ...gear.stacks.flatMap(stackProblems),
    ...repeats('plate', gear.plates.map(plateText)),
    ...repeats(
      'bar',
      gear.bars.map(({ name }) => name),
    ),
    ...repeats(
      'stack',
      gear.stacks.map(({ name }) => name),
    ),
    ...repeats(
      'band',
      gear.bands.map(({ name }) => name),
    ),
    ...repeats(
      'dumbbell',
      gear.dumbbells.map(({ stamped }) => quantityText(stamped)),
    ),
  ];
}

function kindProblems({ bars, plates, dumbbells, handles, stacks, bands }: Gear): Problem[] {
  const kinds = { bars, plates, dumbbells, handles, stacks, bands };
  return Object.entries(kinds)
    .filter(([, list]) => list.length > GEAR_LIMITS.kinds)
    .map(([name, { length }]) => ({
      what: `There are ${length} kinds of ${name}.`,
      why: `${GEAR_LIMITS.kinds} are the most that are kept.`,
      fix: 'Leave out what you do not train with.',
    }));
}

function massProblems(gear: Gear): Problem[] {
  const positive: readonly (readonly [string, Quantity])[] = [
    ...gear.bars.map((bar) => [`The bar "${bar.name}"`, bar.mass] as const),
    ...gear.plates.map(({ stamped }) => ['A plate', stamped] as const),
    ...gear.dumbbells.map(({ stamped }) => ['A dumbbell', stamped] as const),
    ...gear.handles.map(({ mass }) => ['A dumbbell handle', mass] as const),
    ...gear.stacks.map(({ name, step }) => [`The step of the stack "${name}"`, step] as const),
    ...gear.bands.map((band) => [`The band "${band.name}"`, band.assistance] as const),
    ['The step of free loads', gear.freeStep],
  ];
  const notNegative = gear.bars.map(
    ({ name, collars }) => [`The collars of the bar "${name}"`, collars] as const,
  );
  const wrong = (what: string, mass: Quantity, wanted: string): Problem => ({
    what: `${what} weighs ${quantityText(mass)}.`,
    why: `A mass ${wanted}.`,
    fix: 'Write what the scale or the stamp says.',
  });
  return [
    ...positive
      .filter(([, { amount }]) => !(amount > 0 && Number.isFinite(amount)))
      .map(([what, mass]) => wrong(what, mass, 'is more than 0 here')),
    ...notNegative
      .filter(([, { amount }]) => !(amount >= 0 && Number.isFinite(amount)))
      .map(([what, mass]) => wrong(what, mass, 'is never negative')),
  ];
}

function measuredProblems({ stamped, measured }: PlateKind): Problem[] {
  if (!measured || Math.abs(massOf(measured) - massOf(stamped)) <= MOST_OFF * massOf(stamped)) {
    return [];
  }
  return [
    {
      what: `A plate stamped ${quantityText(stamped)} is said to weigh ${quantityText(measured)}.`,
      why: 'That is more than a tenth from its stamp.',
      fix: 'Weigh it again, and check the unit.',
    },
  ];
}

function countProblems(gear: Gear): Problem[] {
  const counted = [
    ...gear.plates.map((plate) => ({ what: `plates of ${plateText(plate)}`, count: plate.count })),
    ...gear.dumbbells.map(({ stamped, count }) => ({
      what: `dumbbells of ${quantityText(stamped)}`,
      count,
    })),
    ...gear.handles.map(({ mass, count }) => ({ what: `handles of ${quantityText(mass)}`, count })),
  ];
  return counted
    .filter(({ count }) => !Number.isInteger(count) || count < 0)
    .map(({ what, count }) => ({
      what: `The number of ${what} is ${count}.`,
      why: 'It is a whole number, 0 or more.',
      fix: 'Write how many you own.',
    }));
}

function stackProblems({ name, lowest, step, highest }: Stack): Problem[] {
  const [first, by, last] = [massOf(lowest), massOf(step), massOf(highest)];
  if (by <= 0) return [];
  if (last < first || first < 0) {
    return [
      {
        what: `The stack "${name}" goes from ${quantityText(lowest)} to ${quantityText(highest)}.`,
        why: 'Its highest load is above its lowest, and neither is negative.',
        fix: 'Write the two ends of the stack the other way round, or correct them.',
      },
    ];
  }
  if ((last - first) % by === 0) return [];
  return [
    {
      what: `The stack "${name}" cannot reach ${quantityText(highest)} from ${quantityText(lowest)} in steps of ${quantityText(step)}.`,
      fix: 'Correct the step or one of the ends.',
    },
  ];
}

function repeats(what: string, names: readonly string[]): Problem[] {
  const again = new Set(names.filter((name, at) => names.indexOf(name) !== at));
  return [...again].map((name) => ({
    what: `The ${what} "${name}" is listed more than once.`,
    fix: 'Keep one entry and put the full number there, or give each its own name.',
  }));
}

const plateText = ({ stamped, measured }: PlateKind): string =>
  measured
    ? `${quantityText(stamped)} (measured ${quantityText(measured)})`
    : quantityText(stamped);

/** What may well be right in a list of gear, but will surprise: one problem each. */
export function gearSurprises({ plates }: Gear): Problem[] {
  return plates
    .filter(({ count }) => count % 2 === 1)
    .map(({ stamped, count }) => ({
      what: `There ${count === 1 ? 'is 1 plate' : `are ${count} plates`} of ${quantityText(stamped)}.`,
      why: 'One of them has no partner, so it never goes on a bar.',
      fix: 'Correct the number if you own another; one plate can still hang from a belt.',
    }));
}
