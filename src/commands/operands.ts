import { WrongUse } from '../text/problem.ts';
import { MOST_AMOUNT, type Quantity, readQuantity, type Unit } from '../training/mass.ts';
import type { Call } from './call.ts';

/** The name of a kit given by `--kit`, or null. */
export const kitOption = ({ options }: Call): string | null =>
  typeof options.kit === 'string' ? options.kit : null;

/** The day named by `--day`, or null. */
export const dayOption = ({ options }: Call): string | null =>
  typeof options.day === 'string' ? options.day : null;

/** Minutes given by `--minutes`, or null. @throws Refusal unless it is a whole number from 10 to 180. */
export const minutesOption = ({ options }: Call): number | null =>
  typeof options.minutes === 'string' ? wholeNumber(options.minutes, '--minutes', 10, 180) : null;

/** A whole number from an option, from `low` to `high`. @throws Refusal for anything else. */
export function wholeNumber(text: string, name: string, low: number, high: number): number {
  const value = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= low && value <= high) return value;
  throw new WrongUse({
    what: `${name} is "${text}".`,
    why: `It is a whole number from ${low} to ${high}.`,
  });
}

/**
 * A mass as it was typed: `82.5`, `82,5kg`, `185 lb`. A bare number is in `unit`.
 * @throws Refusal for anything else.
 */
export function massOperand(text: string, unit: Unit): Quantity {
  const quantity = readQuantity(text, unit);
  if (quantity) return quantity;
  throw new WrongUse({
    what: `"${text}" is not a mass.`,
    fix: `Write a number up to ${MOST_AMOUNT}, with a unit if it is not ${unit}: 82.5, 82.5kg, 185lb.`,
  });
}
