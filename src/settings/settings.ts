import * as z from 'zod';
import { once } from '../text/once.ts';
import { answersSchema } from './answers-schema.ts';
import { gearSchema } from './gear-schema.ts';

/**
 * What belongs to this machine. Training data never lives here; gear is only a copy of the
 * journal's latest, for a machine without history. Each is made when it is asked for: a start reads
 * one or two of them.
 */
export const SETTING_SCHEMAS = {
  /** Program file of the last session in the usual data folder, absolute. */
  program: () => z.string().nullable(),
  /** The same of other data folders, by their paths. */
  programs: () => z.record(z.string(), z.string()),
  bell: () => z.boolean(),
  flash: () => z.boolean(),
  speech: () => z.boolean(),
  /** What speech says: whole sentences, or as few words as will do. */
  spoken: () => z.enum(['full', 'few']),
  notification: () => z.boolean(),
  /** Taps on the screen; on, most terminals want shift for selecting text. */
  taps: () => z.boolean(),
  theme: () => z.enum(['colour', 'plain']),
  gear: () => gearSchema().nullable(),
  /** The cautions were read, and whether a doctor was advised first. */
  cautions: () => z.enum(['unread', 'read', 'doctor-first']),
  /** Answers to the questions of a new program that were left before its end. */
  answers: () => answersSchema().nullable(),
  /** Rates and bands of body weight; `ask` until the lifter has answered. */
  weightAdvice: () => z.enum(['ask', 'yes', 'no']),
};

type Schemas = typeof SETTING_SCHEMAS;

export type Settings = { [Key in keyof Schemas]: z.output<ReturnType<Schemas[Key]>> };

/** All of them, as they are written. */
export const settingsSchema = once(() => {
  const made = Object.entries(SETTING_SCHEMAS).map(([key, make]) => [key, make()]);
  return z.object(Object.fromEntries(made) as { [Key in keyof Schemas]: ReturnType<Schemas[Key]> });
});

export const DEFAULT_SETTINGS: Settings = {
  program: null,
  programs: {},
  bell: true,
  flash: true,
  speech: false,
  spoken: 'full',
  notification: false,
  taps: false,
  theme: 'colour',
  gear: null,
  cautions: 'unread',
  answers: null,
  weightAdvice: 'ask',
};
