import * as z from 'zod';
import { LINE_VERSION } from '../journal/lines.ts';
import { EVENT_TYPES } from '../journal/records.ts';

/**
 * The JSON text of a line of a journal file; in front of it stand 8 hex digits of the CRC-32 of its
 * bytes, and a space. What an event says of its own stands beside these.
 */
export const journalLineSchema = z.looseObject({
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
