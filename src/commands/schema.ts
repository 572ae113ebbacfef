import * as z from 'zod';
import { LINE_VERSION } from '../journal/lines.ts';
import { EVENT_TYPES } from '../journal/read-event.ts';
import { formatGuide, programJsonSchema } from '../program/format-guide.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { WrongUse } from '../text/problem.ts';
import type { Run } from './call.ts';
import { SCHEMAS } from './schemas.ts';

/**
 * The JSON text of a line of a journal file; in front of it stand 8 hex digits of the CRC-32 of its
 * bytes, and a space. What an event says of its own stands beside these.
 */
const journalLineSchema = z.looseObject({
  v: z.literal(LINE_VERSION).describe('version of the format'),
  seq: z.int().nonnegative().describe('place of the event in the file it was first written to'),
  id: z
    .string()
    .regex(/^[^:]+:\d+$/)
    .describe('id of that file, and the place again'),
  at: z
    .looseObject({
      wall: z.number().describe('epoch milliseconds'),
      up: z.number().nullable().describe('milliseconds since the machine started'),
      boot: z.string().nullable().describe('which start of the machine'),
    })
    .describe('when it happened'),
  zone: z.number().describe('minutes that local time was ahead of UTC'),
  type: z.enum(EVENT_TYPES as [string, ...string[]]),
});

/** A program file is written by people, and has a schema for editors. */
const PROGRAM = 'program';

/** What lies in the data folder. */
const JOURNAL = 'journal';

/** Prints the JSON Schema (draft-7) of a document that other programs may read or write. */
export const run: Run = async ({ args: [name = ''], options, write }) => {
  if (options.as !== undefined && options.as !== 'json') {
    write(guideOf(name, String(options.as)).replace(/\n$/, ''));
    return 0;
  }
  const found = Object.hasOwn(SCHEMAS, name) ? SCHEMAS[name] : undefined;
  if (name === PROGRAM) write(jsonText(programJsonSchema()));
  else if (name === JOURNAL) {
    write(jsonText(asJsonSchema(journalLineSchema, 'The JSON text of a line of a journal file')));
  }
  // Of what is read by others only what they may rely on: keys may be added one day.
  else if (found) write(jsonText(asJsonSchema(await found.load(), found.title)));
  else throw new WrongUse(unknown(name));
  return 0;
};

const asJsonSchema = (schema: z.ZodType, title: string) => ({
  title,
  ...z.toJSONSchema(schema, { target: 'draft-7', io: 'input' }),
});

function guideOf(name: string, as: string): string {
  if (name === PROGRAM && as === 'text') return formatGuide();
  throw new WrongUse({
    what: `There is no "${name}" as "${as}".`,
    fix: 'Write --as json, or, of programs alone, --as text.',
  });
}

function unknown(name: string) {
  const names = [PROGRAM, JOURNAL, ...Object.keys(SCHEMAS)];
  const near = nearestKey(name, names);
  return {
    what: `There is no schema of "${name}".`,
    fix: near ? `Did you mean "${near}"?` : `Write one of: ${names.join(', ')}.`,
  };
}
