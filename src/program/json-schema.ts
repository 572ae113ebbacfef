import * as z from 'zod';
import { programSchema } from './program-schema.ts';

/** The JSON Schema of a program file, in the draft that editors know best, to complete and check it. */
export function programJsonSchema(): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(programSchema, { target: 'draft-7', io: 'input' });
  return { ...schema, title: 'Program for holdfast' };
}
