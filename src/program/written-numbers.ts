import type { Range } from './program.ts';
import { written } from './written.ts';
import { shown, Wrong } from './wrong.ts';

/** Limits of a number, and a range to show as an example. */
interface Span {
  readonly low: number;
  readonly high: number;
  readonly example: string;
}

/** `6` or `5-8`. */
export function range(description: string, span: Span) {
  const { low, high, example } = span;
  const fix = `Write a whole number or a range from ${low} to ${high}, such as ${example}.`;
  const forEditors = {
    description,
    anyOf: [
      { type: 'integer', minimum: low, maximum: high },
      { type: 'string', pattern: '^\\d+ *[-–] *\\d+$' },
    ],
    examples: [example],
  };
  return written<Range>(forEditors, (found) => {
    const parts = /^(\d+)(?:\s*[-–]\s*(\d+))?$/.exec(String(found).trim());
    if (!parts || typeof found === 'object') {
      return new Wrong(`${shown(found)} is not a number or a range of numbers.`, fix);
    }
    const from = Number(parts[1]);
    const to = Number(parts[2] ?? parts[1]);
    if (from > to) {
      return new Wrong(`the range ${from}-${to} runs backwards.`, `Write ${to}-${from}.`);
    }
    return outside(from, span, fix) ?? outside(to, span, fix) ?? [from, to];
  });
}

/** One whole number. */
export function whole(description: string, span: Omit<Span, 'example'>) {
  const { low, high } = span;
  const fix = `Write a whole number from ${low} to ${high}.`;
  const forEditors = { description, type: 'integer', minimum: low, maximum: high };
  return written<number>(forEditors, (found) =>
    typeof found === 'number' && Number.isInteger(found)
      ? (outside(found, span, fix) ?? found)
      : new Wrong(`${shown(found)} is not a whole number.`, fix),
  );
}

/** A number with decimals. */
export function decimal(description: string, span: Omit<Span, 'example'>) {
  const { low, high } = span;
  const fix = `Write a number from ${low} to ${high}.`;
  const forEditors = { description, type: 'number', minimum: low, maximum: high };
  return written<number>(forEditors, (found) =>
    typeof found === 'number' && Number.isFinite(found)
      ? (outside(found, span, fix) ?? found)
      : new Wrong(`${shown(found)} is not a number.`, fix),
  );
}

function outside(found: number, { low, high }: Omit<Span, 'example'>, fix: string): Wrong | null {
  if (found < low) return new Wrong(`${found} is too low: ${low} is the least.`, fix);
  if (found > high) return new Wrong(`${found} is too high: ${high} is the most.`, fix);
  return null;
}

/** A band of percent a week, `0.5-1.0`. */
export function band(description: string, { low, high, example }: Span) {
  const fix = `Write two numbers from ${low} to ${high}, such as ${example}.`;
  const forEditors = {
    description,
    type: 'string',
    pattern: '^\\d+(\\.\\d+)? *[-–] *\\d+(\\.\\d+)?$',
    examples: [example],
  };
  return written<readonly [number, number]>(forEditors, (found) => {
    const parts = /^(\d+(?:\.\d+)?)\s*[-–]\s*(\d+(?:\.\d+)?)$/.exec(String(found).trim());
    if (!parts || typeof found !== 'string') return new Wrong(`${shown(found)} is no range.`, fix);
    const [from, to] = [Number(parts[1]), Number(parts[2])];
    if (from >= to) return new Wrong(`${shown(found)} must rise from low to high.`, fix);
    return outside(from, { low, high }, fix) ?? outside(to, { low, high }, fix) ?? [from, to];
  });
}

/** A number that only counts as one of a few, such as the shares 1 and 0.5. */
export function oneOfNumbers<const T extends number>(description: string, numbers: readonly T[]) {
  return written<T>({ description, enum: numbers }, (found) => {
    const known = numbers.find((number) => number === found);
    if (known !== undefined) return known;
    return new Wrong(`${shown(found)} does not count.`, `Write ${numbers.join(' or ')}.`);
  });
}
