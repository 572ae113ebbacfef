import * as z from 'zod';
import { answersSchema } from './answers-schema.ts';
import { gearSchema } from './gear-schema.ts';

/**
 * What belongs to this machine. Training data never lives here; gear is only a copy of the
 * journal's latest, for a machine without history.
 */
export const settingsSchema = z.object({
  /** Program file of the last session in the usual data folder, absolute. */
  program: z.string().nullable().default(null),
  /** The same of other data folders, by their paths. */
  programs: z.record(z.string(), z.string()).default({}),
  bell: z.boolean().default(true),
  flash: z.boolean().default(true),
  speech: z.boolean().default(false),
  /** What speech says: whole sentences, or as few words as will do. */
  spoken: z.enum(['full', 'few']).default('full'),
  notification: z.boolean().default(false),
  /** Taps on the screen; on, most terminals want shift for selecting text. */
  taps: z.boolean().default(false),
  theme: z.enum(['colour', 'plain']).default('colour'),
  gear: gearSchema.nullable().default(null),
  /** The cautions were read, and whether a doctor was advised first. */
  cautions: z.enum(['unread', 'read', 'doctor-first']).default('unread'),
  /** Answers to the questions of a new program that were left before its end. */
  answers: answersSchema.nullable().default(null),
  /** Rates and bands of body weight; `ask` until the lifter has answered. */
  weightAdvice: z.enum(['ask', 'yes', 'no']).default('ask'),
});

export type Settings = z.infer<typeof settingsSchema>;

export const DEFAULT_SETTINGS: Settings = settingsSchema.parse({});
