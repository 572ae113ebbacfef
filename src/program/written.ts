import { Temporal } from 'temporal-polyfill';
import * as z from 'zod';
import { nearestKey } from '../text/nearest.ts';
import { shown, Wrong } from './wrong.ts';

/** What editors are told of a key: parts of a JSON Schema. */
type ForEditors = Readonly<Record<string, unknown>> & { readonly description: string };

/**
 * The schema of a key that is read by a function of ours, so that it can say what was found and
 * what to write. Editors get `forEditors`, which must allow just what `read` takes.
 */
export function written<T>(forEditors: ForEditors, read: (found: unknown) => T | Wrong) {
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
