import * as z from 'zod';
import { once } from '../text/once.ts';
import { JOINTS, MUSCLES } from '../training/lift.ts';
import { gearSchema } from './gear-schema.ts';

/** The questions that a new program comes from, in their order; the last is the program itself. */
export const QUESTIONS = [
  'unit',
  'kit',
  'gear',
  'aim',
  'days',
  'minutes',
  'hurts',
  'focus',
  'bests',
  'program',
] as const;

export type Question = (typeof QUESTIONS)[number];

/** What was answered so far, so that the questions go on where they were left. */
export const answersSchema = once(() =>
  z.object({
    /** The question that is asked next. */
    at: z.enum(QUESTIONS),
    unit: z.enum(['kg', 'lb']),
    /** Place of the kit among the ready ones. */
    kit: z.int().min(0),
    gear: gearSchema(),
    aim: z.enum(['cut', 'maintain', 'build']),
    days: z.union([z.literal(2), z.literal(3), z.literal(4)]),
    minutes: z.int().min(15).max(180),
    hurts: z.array(z.enum(JOINTS)).readonly(),
    focus: z.array(z.enum(MUSCLES)).readonly(),
    /** Loads in micrograms. */
    bests: z
      .array(
        z.object({
          lift: z.string(),
          load: z.int(),
          reps: z.int().min(1).max(99),
          reserve: z.int().min(0).max(10),
        }),
      )
      .readonly(),
  }),
);

export type Answers = z.infer<ReturnType<typeof answersSchema>>;
