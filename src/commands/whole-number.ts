import { WrongUse } from '../text/problem.ts';

/** A whole number from an option, from `low` to `high`. @throws Refusal for anything else. */
export function wholeNumber(text: string, name: string, low: number, high: number): number {
  const value = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= low && value <= high) return value;
  throw new WrongUse({
    what: `${name} is "${text}".`,
    why: `It is a whole number from ${low} to ${high}.`,
  });
}
