import * as z from 'zod';
import { LIFTER_MODEL, type LifterModel } from '../rehearsal/lifter-model.ts';
import { MUSCLES, type Muscle } from '../training/lift.ts';

const share = z.number();
const muscle = z.enum(MUSCLES);
const modelKeys = Object.keys(LIFTER_MODEL) as (keyof LifterModel)[];

/**
 * What `rehearse --json` prints. Other tools rely on it: add keys, never change these. Masses are
 * numbers in `unit`, shares are of 1; keys are always there, null rather than absent.
 */
export const rehearseSchema = z.object({
  schema: z.literal(1),
  program: z.string(),
  unit: z.enum(['kg', 'lb']),
  from: z.iso.date(),
  loss: z.number().meta({ description: '% of body weight a week' }),
  cut_to_minutes: z
    .int()
    .nullable()
    .meta({ description: 'minutes that every session is cut to; null: whole days' }),
  seed: z.int(),
  lifter: z.enum(['novice', 'trained', 'lean']),
  draws: z.int().meta({ description: 'lifters drawn; what follows is of the one in the middle' }),
  kept_low: share.meta({ description: 'over the draws, without the tenth at either end' }),
  kept_high: share,
  draws_that_keep: z.int(),
  compared: z
    .object({
      first: z.string(),
      second: z.string(),
      kept: share.meta({ description: 'by the second, in its middle draw' }),
      difference: z.number().meta({ description: 'second less first, mean over the draws' }),
      standard_error: z.number(),
    })
    .nullable(),
  model: z.object(
    Object.fromEntries(modelKeys.map((key) => [key, z.number()])) as Record<
      keyof LifterModel,
      z.ZodNumber
    >,
  ),
  left_out: z
    .array(z.string())
    .meta({ description: 'a sentence for each lift that the gear cannot load' }),
  kept: share.meta({
    description: 'strength in the last week ÷ at the start, median of compounds',
  }),
  lowest: share,
  keeps_strength: z.boolean(),
  minutes: z.int(),
  longest_minutes: z.int(),
  lighter_weeks: z.int(),
  muscles: z.array(
    z.object({
      muscle,
      mean: z.number().meta({ description: 'hard sets in an average week' }),
      least: z.number(),
      most: z.number(),
      judged: z.enum(['too-little', 'inside', 'too-much']),
    }),
  ),
  weeks: z.array(
    z.object({
      week: z.int(),
      from: z.iso.date(),
      sessions: z.int(),
      minutes: z.int().nullable(),
      body_weight: z.number().nullable(),
      kept: share,
      lighter: z.boolean(),
      hard_sets: z.object(
        Object.fromEntries(MUSCLES.map((each) => [each, z.number()])) as Record<
          Muscle,
          z.ZodNumber
        >,
      ),
      exercises: z.array(
        z.object({
          lift: z.string(),
          name: z.string(),
          track: z.string(),
          moves: z.array(z.enum(['start', 'up', 'hold', 'ease', 'return'])),
          load: z.number().meta({ description: "of the week's last session" }),
          basis: z.enum(['total', 'hand', 'stack', 'added', 'load']),
          counts: z.enum(['reps', 'seconds']),
          done: z.array(z.int()).meta({ description: 'reps, or seconds, of each set' }),
          reserve: z.array(z.number().nullable()),
          kept: share,
        }),
      ),
    }),
  ),
});

export type RehearseJson = z.infer<typeof rehearseSchema>;
