import { type Problem, Refusal } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import { type Quantity, readQuantity, type Unit } from './mass.ts';

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
export function entriesOf(option: string, written: readonly string[], unit: Unit): Entry[] {
  const parts = written.flatMap((list) => list.split(','));
  return parts
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
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
export const isRemoval = ({ value }: Entry): boolean => value === '0';

/** A name from before the `=`. */
export function nameOf(entry: Entry): string {
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
export function stepsIn(entry: Entry, text: string): Steps | null {
  const found = STEPS.exec(text);
  if (!found) return null;
  const [, lowest = '', highest = '', step = ''] = found;
  return {
    lowest: massIn(entry, lowest, '0'),
    step: massIn(entry, step),
    highest: massIn(entry, highest),
  };
}

export const wrong = ({ option, written }: Pick<Entry, 'option' | 'written'>, why: string) =>
  new Refusal(problem(option, written, why));

const problem = (option: string, written: string, why: string): Problem => ({
  what: `${option} has "${safeText(written)}".`,
  why,
});
