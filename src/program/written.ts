import { Temporal } from 'temporal-polyfill';
import * as z from 'zod';
import { nearestKey } from '../text/nearest.ts';
import { type Quantity, readQuantity } from '../training/mass.ts';
import type { Range, Rest } from './program.ts';
import { shown, Wrong } from './wrong.ts';

/** What editors are told of a key: parts of a JSON Schema. */
type ForEditors = Readonly<Record<string, unknown>> & { readonly description: string };

/**
 * The schema of a key that is read by a function of ours, so that it can say what was found and
 * what to write. Editors get `forEditors`, which must allow just what `read` takes.
 */
function written<T>(forEditors: ForEditors, read: (found: unknown) => T | Wrong) {
  return z
    .unknown()
    .meta(forEditors)
    .transform((found, context) => {
      const value = read(found);
      if (!(value instanceof Wrong)) return value;
      context.addIssue({ code: 'custom', message: value.what, params: { fix: value.fix } });
      return z.NEVER;
    });
}

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

const LONGEST_REST = 15 * 60;

/** `3-5 min`, `90 s`, `90 s - 2 min`; seconds. */
export function rest(description: string, example: string) {
  const fix = `Write seconds or minutes, such as ${example}.`;
  const forEditors = {
    description,
    type: 'string',
    pattern:
      '^\\d+(\\.\\d+)? *(s|min)?( *[-–] *\\d+(\\.\\d+)?)? *(s|min)$|^\\d+(\\.\\d+)? *(s|min)$',
    examples: [example],
  };
  return written<Rest>(forEditors, (found) => {
    const text = String(found).trim();
    const clock = /^(\d+):([0-5]\d)$/.exec(text);
    if (clock) {
      const seconds = Number(clock[1]) * 60 + Number(clock[2]);
      return new Wrong(`${shown(found)} is a time of day, not a rest.`, `Write ${seconds} s.`);
    }
    if (/^\d+(\.\d+)?(\s*[-–]\s*\d+(\.\d+)?)?$/.test(text)) {
      return new Wrong(`${shown(found)} has no unit.`, `Write ${text} s or ${text} min.`);
    }
    const parts = /^(\d+(?:\.\d+)?)\s*(?:(s|min)?\s*[-–]\s*(\d+(?:\.\d+)?)\s*)?(s|min)$/.exec(text);
    if (!parts || typeof found !== 'string') {
      return new Wrong(`${shown(found)} is not a rest.`, fix);
    }
    const [, early, earlyUnit, late, unit] = parts;
    const from = secondsOf(early, earlyUnit ?? unit);
    const to = secondsOf(late ?? early, unit);
    if (from > to) return new Wrong(`${shown(found)} runs backwards.`, fix);
    if (to > LONGEST_REST) return new Wrong(`${shown(found)} is over 15 minutes.`, fix);
    if (to === 0) return new Wrong('there is no rest of 0 seconds.', fix);
    return { from, to };
  });
}

const secondsOf = (amount: string | undefined, unit: string | undefined): number =>
  Math.round(Number(amount) * (unit === 'min' ? 60 : 1));

/** A mass: a bare number is in the program's unit; `45 lb` says its own. */
export interface WrittenMass {
  readonly amount: number;
  /** Null: the program's unit. */
  readonly unit: Quantity['unit'] | null;
}

const MOST_MASS = 1000;

export function massOfLoad(description: string, examples: readonly (number | string)[]) {
  const fix = 'Write a number in the unit of the program, or one with kg or lb behind it.';
  const forEditors = {
    description,
    anyOf: [
      { type: 'number', minimum: -MOST_MASS, maximum: MOST_MASS },
      { type: 'string', pattern: '^[+-]?\\d+([.,]\\d+)? *(kg|lb)$' },
    ],
    examples,
  };
  return written<WrittenMass>(forEditors, (found) => {
    const read =
      typeof found === 'number'
        ? { amount: found, unit: null }
        : typeof found === 'string' && /(?:kg|lb)$/.test(found.trim())
          ? readQuantity(found, 'kg')
          : null;
    if (!read || !Number.isFinite(read.amount)) {
      return new Wrong(`${shown(found)} is not a load.`, fix);
    }
    if (Math.abs(read.amount) > MOST_MASS) {
      return new Wrong(`${shown(found)} is more than anyone lifts.`, fix);
    }
    return read;
  });
}

/** One line of text; line breaks become spaces. */
export function text(description: string, longest: number) {
  const fix = `Write a line of 1 to ${longest} characters.`;
  const forEditors = { description, type: 'string', minLength: 1, maxLength: longest };
  return written<string>(forEditors, (found) => {
    if (typeof found !== 'string')
      return new Wrong(`${shown(found)} is not text.`, quoted(found) ?? fix);
    const line = found.replace(/\s+/g, ' ').trim();
    if (line === '') return new Wrong('there is no text.', fix);
    return line.length > longest ? new Wrong('the text is too long.', fix) : line;
  });
}

const quoted = (found: unknown): string | null =>
  typeof found === 'number' || typeof found === 'boolean' ? `Put it in quotes: "${found}".` : null;

/** One word of a list. */
export function oneOf<const T extends string>(description: string, words: readonly T[]) {
  const fix = `Write ${words.length > 2 ? 'one of ' : ''}${listed(words)}.`;
  return written<T>({ description, enum: words }, (found) => {
    const word = words.find((known) => known === found);
    if (word !== undefined) return word;
    const near = typeof found === 'string' ? nearestKey(found, words) : null;
    return new Wrong(
      `${shown(found)} is not one of the words for it.`,
      near ? `Did you mean ${near}? ${fix}` : fix,
    );
  });
}

const listed = (words: readonly string[]): string =>
  words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;

/** `true` or `false`. */
export function truth(description: string) {
  return written<boolean>({ description, type: 'boolean' }, (found) => {
    if (typeof found === 'boolean') return found;
    const meant = ['yes', 'on', 'no', 'off'].indexOf(String(found).toLowerCase());
    return new Wrong(
      `${shown(found)} is neither true nor false.`,
      meant < 0 ? 'Write true or false.' : `Write ${meant < 2}.`,
    );
  });
}

/** A calendar day, `2026-11-25`. */
export function day(description: string) {
  const forEditors = { description, type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' };
  return written<string>(forEditors, (found) => {
    if (typeof found === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(found)) {
      try {
        return Temporal.PlainDate.from(found, { overflow: 'reject' }).toString();
      } catch {
        // Not a day of any month: the sentence below says so.
      }
    }
    return new Wrong(
      `${shown(found)} is not a day of the calendar.`,
      'Write year, month and day, such as 2026-11-25.',
    );
  });
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
