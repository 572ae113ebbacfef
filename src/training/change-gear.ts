import { nearestKey } from '../text/nearest.ts';
import { type Problem, Refusal } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import { defaultGear } from './default-gear.ts';
import { type Gear, STATIONS } from './gear.ts';
import { massOf, type Quantity, quantityText, readQuantity, type Unit } from './mass.ts';

/** @throws Refusal for text that cannot be read */
type Change = (gear: Gear, written: readonly string[], option: string) => Gear;

/**
 * What is changed by text, in the order in which several changes are made: `20kg=4, 10kg=2` for
 * the plates. Each is told the option or the field that the text stands in, for its refusals.
 */
export const GEAR_CHANGES = {
  defaults: (_, [written], option) => defaultGear(unitOf(written, option)),
  unit: (gear, [written], option) => ({ ...gear, unit: unitOf(written, option) }),
  bars: eachEntry((gear, entry) => ({ ...gear, bars: barsWith(gear, entry) })),
  collars: eachEntry((gear, entry) => {
    const bar = named(gear.bars, entry, 'bar');
    const collars = massIn(entry, entry.value, '0');
    return { ...gear, bars: gear.bars.map((one) => (one === bar ? { ...one, collars } : one)) };
  }),
  plates: eachEntry((gear, entry) => ({
    ...gear,
    plates: counted(gear.plates, entry, (stamped, count) => ({ stamped, count })),
  })),
  measured: eachEntry((gear, entry) => ({ ...gear, plates: platesMeasured(gear, entry) })),
  dumbbells: eachEntry((gear, entry) => ({
    ...gear,
    dumbbells: counted(gear.dumbbells, entry, (stamped, count) => ({ stamped, count })),
  })),
  handles: eachEntry((gear, entry) => ({ ...gear, handles: handlesWith(gear, entry) })),
  stacks: eachEntry((gear, entry) => ({ ...gear, stacks: stacksWith(gear, entry) })),
  bands: eachEntry((gear, entry) => ({ ...gear, bands: bandsWith(gear, entry) })),
  freeStep: (gear, [written = ''], option) => ({
    ...gear,
    freeStep: massIn({ option, written, key: '', value: written, unit: gear.unit }, written),
  }),
  belt: (gear, [written], option) => ({ ...gear, belt: yesOrNo(written, option) }),
  safeties: (gear, [written], option) => ({ ...gear, safeties: yesOrNo(written, option) }),
  stations: (gear, written, option) => ({ ...gear, stations: stationsIn(written, option) }),
} as const satisfies Readonly<Record<string, Change>>;

/** A part of the gear that text can change. */
export type GearPart = keyof typeof GEAR_CHANGES;

function eachEntry(change: (gear: Gear, entry: Entry) => Gear): Change {
  return (gear, written, option) => entriesOf(option, written, gear.unit).reduce(change, gear);
}

function unitOf(written: string | undefined, option: string): Unit {
  if (written === 'kg' || written === 'lb') return written;
  throw wrong({ option, written: written ?? '' }, 'It is kg or lb.');
}

function yesOrNo(written: string | undefined, option: string): boolean {
  if (written === 'yes' || written === 'no') return written === 'yes';
  throw wrong({ option, written: written ?? '' }, 'It is yes or no.');
}

/** Those named, with commas between; `none` for none of them. */
function stationsIn(written: readonly string[], option: string): Gear['stations'] & {} {
  const typed = written.flatMap((text) => text.split(',')).map((name) => name.trim());
  const names = typed.map((name) => name.toLowerCase());
  if (names.length === 1 && names[0] === 'none') return [];
  const unknown = typed.find((_, at) => !STATIONS.some((station) => station === names[at]));
  if (unknown !== undefined || names.length === 0) {
    throw wrong(
      { option, written: unknown ?? '' },
      `Write any of ${STATIONS.join(', ')}, or none.`,
    );
  }
  return STATIONS.filter((station) => names.includes(station));
}

/** The list with the entry in the place of the one it is, or behind the others; null takes it away. */
function withEntry<One>(list: readonly One[], is: (one: One) => boolean, entry: One | null): One[] {
  if (entry === null) return list.filter((one) => !is(one));
  return list.some(is) ? list.map((one) => (is(one) ? entry : one)) : [...list, entry];
}

const alike = (a: Quantity, b: Quantity): boolean => massOf(a) === massOf(b);

function named<One extends { readonly name: string }>(
  list: readonly One[],
  entry: Entry,
  what: string,
): One {
  const found = list.find(({ name }) => name === entry.key);
  if (found) return found;
  const names = list.map(({ name }) => name);
  const near = nearestKey(entry.key, names);
  throw new Refusal({
    what: `Your gear has no ${what} "${entry.key}".`,
    fix: near ? `Did you mean "${near}"?` : `It has: ${names.join(', ') || 'none'}.`,
  });
}

function barsWith({ bars, unit }: Gear, entry: Entry): Gear['bars'] {
  if (isRemoval(entry)) {
    const gone = named(bars, entry, 'bar');
    return bars.filter((bar) => bar !== gone);
  }
  const name = nameOf(entry);
  const before = bars.find((bar) => bar.name === name);
  const bar = { name, mass: massIn(entry, entry.value), collars: { amount: 0, unit } };
  return withEntry(bars, (one) => one === before, { ...bar, ...before, mass: bar.mass });
}

interface Counted {
  readonly stamped: Quantity;
  readonly count: number;
}

/** Things of a stamped mass and how many there are; 0 takes them away, a new mass comes in order. */
function counted<One extends Counted>(
  list: readonly One[],
  entry: Entry,
  made: (stamped: Quantity, count: number) => One,
): One[] {
  const count = countOf(entry);
  return massesIn(entry).reduce<readonly One[]>((now, stamped) => {
    const before = theOne(now, stamped, entry);
    const after = count === 0 ? null : { ...made(stamped, count), ...before, count };
    return withEntry(now, (one) => one === before, after);
  }, list) as One[];
}

function theOne<One extends Counted>(
  list: readonly One[],
  stamped: Quantity,
  entry: Entry,
): One | undefined {
  const found = list.filter((one) => alike(one.stamped, stamped));
  if (found.length < 2) return found[0];
  throw wrong(
    entry,
    'You own several kinds of that stamp, told apart by what they really weigh; change them in the form that "holdfast gear --edit" opens.',
  );
}

/** The masses named before the `=`: one, or all of a row of steps. */
function massesIn(entry: Entry): readonly Quantity[] {
  const steps = stepsIn(entry, entry.key);
  if (!steps) return [massIn(entry, entry.key)];
  const { lowest, step, highest } = steps;
  const count = Math.floor((massOf(highest) - massOf(lowest)) / massOf(step)) + 1;
  if (lowest.unit === step.unit && lowest.amount > 0 && count >= 1 && count <= MOST_STEPS) {
    return Array.from({ length: count }, (_, at) => ({
      // Twelve digits keep 0.1 + 0.2 at 0.3.
      amount: Number((lowest.amount + at * step.amount).toPrecision(12)),
      unit: lowest.unit,
    }));
  }
  throw wrong(
    entry,
    `A row of masses rises from above 0, all in one unit, in at most ${MOST_STEPS} steps.`,
  );
}

const MOST_STEPS = 60;

function platesMeasured({ plates }: Gear, entry: Entry): Gear['plates'] {
  const stamped = massIn(entry, entry.key);
  const plate = theOne(plates, stamped, entry);
  if (!plate) throw wrong(entry, `You own no plate of ${quantityText(stamped)}.`);
  const { measured: _, ...asStamped } = plate;
  const after = isRemoval(entry) ? asStamped : { ...plate, measured: massIn(entry, entry.value) };
  return withEntry(plates, (one) => one === plate, after);
}

function handlesWith({ handles }: Gear, entry: Entry): Gear['handles'] {
  const mass = massIn(entry, entry.key);
  const count = countOf(entry);
  const handle = count === 0 ? null : { mass, count };
  return withEntry(handles, (one) => alike(one.mass, mass), handle);
}

function stacksWith({ stacks }: Gear, entry: Entry): Gear['stacks'] {
  if (isRemoval(entry)) {
    const gone = named(stacks, entry, 'stack');
    return stacks.filter((stack) => stack !== gone);
  }
  const name = nameOf(entry);
  const steps = stepsIn(entry, entry.value);
  if (!steps) throw wrong(entry, 'Write a stack as "pulldown=5kg..100kg by 5kg".');
  return withEntry(stacks, (one) => one.name === name, { name, ...steps });
}

function bandsWith({ bands }: Gear, entry: Entry): Gear['bands'] {
  if (isRemoval(entry)) {
    const gone = named(bands, entry, 'band');
    return bands.filter((band) => band !== gone);
  }
  const name = nameOf(entry);
  const assistance = massIn(entry, entry.value);
  return withEntry(bands, (one) => one.name === name, { name, assistance });
}

/** More of one kind, or more kg or lb in one piece, are a slip of the fingers. Ours. */
export const MOST_OWNED = 200;
export const HEAVIEST = 1000;
const LONGEST_NAME = 40;

/** One part of a list as `20kg=4, 10kg=4`: what is named, and what is said of it. */
export interface Entry {
  /** The option that it stands in, as it was typed: `--plates`. */
  readonly option: string;
  readonly written: string;
  readonly key: string;
  readonly value: string;
  /** Unit of numbers that name none. */
  readonly unit: Unit;
}

/** @throws Refusal for a part that is not `something=something`. */
function entriesOf(option: string, written: readonly string[], unit: Unit): Entry[] {
  const parts = written
    .flatMap((list) => list.split(','))
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) {
    throw wrong(
      { option, written: written.join(',') },
      'It names nothing, so nothing would change.',
    );
  }
  return parts.map((part) => {
    const [key = '', value = '', ...more] = part.split('=').map((side) => side.trim());
    const entry = { option, written: part, key, value, unit };
    if (key !== '' && value !== '' && more.length === 0) return entry;
    throw wrong(
      entry,
      'Each part is a thing, "=" and a value; commas stand between parts, so write decimals with a point.',
    );
  });
}

/** Does the entry take its thing off the list? */
const isRemoval = ({ value }: Entry): boolean => value === '0';

/** A name from before the `=`. */
function nameOf(entry: Entry): string {
  const name = safeText(entry.key).trim();
  if (name !== '' && name.length <= LONGEST_NAME) return name;
  throw wrong(entry, `A name has 1 to ${LONGEST_NAME} letters.`);
}

/** A number of things owned, from after the `=`. */
export function countOf(entry: Entry): number {
  const count = /^\d+$/.test(entry.value) ? Number(entry.value) : Number.NaN;
  if (count <= MOST_OWNED) return count;
  throw wrong(entry, `After "=" stands how many you own, a whole number up to ${MOST_OWNED}.`);
}

/** A mass from one side of the `=`; 0 only where `least` is 0. */
export function massIn(entry: Entry, text: string, least: 'above-0' | '0' = 'above-0'): Quantity {
  const mass = readQuantity(text, entry.unit);
  if (
    mass &&
    mass.amount <= HEAVIEST &&
    (mass.amount > 0 || (least === '0' && mass.amount === 0))
  ) {
    return mass;
  }
  throw wrong(
    entry,
    `"${text}" is not a mass: write a number up to ${HEAVIEST}, with a point for decimals, and kg or lb behind it where it is not ${entry.unit}.`,
  );
}

export interface Steps {
  readonly lowest: Quantity;
  readonly step: Quantity;
  readonly highest: Quantity;
}

const STEPS = /^(.+?)\.\.(.+?)\s+by\s+(.+)$/i;

/** Masses that rise by equal steps, as `5kg..100kg by 5kg`; null where the text is no such thing. */
function stepsIn(entry: Entry, text: string): Steps | null {
  const found = STEPS.exec(text);
  if (!found) return null;
  const [, lowest = '', highest = '', step = ''] = found;
  return {
    lowest: massIn(entry, lowest, '0'),
    step: massIn(entry, step),
    highest: massIn(entry, highest),
  };
}

const wrong = ({ option, written }: Pick<Entry, 'option' | 'written'>, why: string) =>
  new Refusal(problem(option, written, why));

const problem = (option: string, written: string, why: string): Problem => ({
  what: `${option} has "${safeText(written)}".`,
  why,
});
