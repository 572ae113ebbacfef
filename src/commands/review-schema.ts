import * as z from 'zod';

const finding = z.object({
  rule: z.string(),
  text: z.string(),
  source: z.string(),
  facts: z.record(z.string(), z.unknown()),
  answered: z.enum(['yes', 'no']).nullable().meta({ description: 'said to it lately' }),
  changes: z.array(
    z.object({
      day: z.string().nullable().meta({ description: 'null: of the whole program' }),
      lift: z.string().nullable(),
      key: z.enum(['sets', 'most_sets', 'days_per_week']),
      from: z.int(),
      to: z.int(),
    }),
  ),
});

/** What `review --json` prints. Masses are numbers in `unit`; shares are of 1. */
export const reviewSchema = z.object({
  schema: z.literal(1),
  program: z.string(),
  date: z.iso.date(),
  unit: z.enum(['kg', 'lb']),
  cut_from: z.iso.date().nullable(),
  verdict: finding,
  below: z.array(finding),
  kept: z.number().nullable().meta({ description: 'of the compound lifts together' }),
  kept_low: z.number().nullable().meta({ description: '90 % interval, low end' }),
  kept_high: z.number().nullable(),
  lifts: z.array(
    z.object({
      lift: z.string(),
      name: z.string(),
      state: z.enum(['known', 'not-yet', 'weigh-in-missing']),
      kept: z.number().nullable(),
      kept_low: z.number().nullable(),
      kept_high: z.number().nullable(),
      e1rm_then: z.number().nullable(),
      e1rm_now: z.number().nullable(),
    }),
  ),
  body_mass: z.number().nullable(),
  rate: z
    .object({
      percent_a_week: z.number(),
      standard_error: z.number(),
      weigh_ins: z.int(),
    })
    .nullable(),
  goal: z
    .object({
      early: z.iso.date().nullable(),
      late: z.iso.date().nullable().meta({ description: 'null: may never be at this rate' }),
      mass_low: z.number().nullable().meta({ description: 'on the day aimed for' }),
      mass_high: z.number().nullable(),
    })
    .nullable()
    .meta({ description: 'where the cut leads by its trend and its error' }),
  weeks: z.array(
    z.object({
      from: z.iso.date(),
      to: z.iso.date(),
      sessions: z.int(),
      planned: z.int(),
      hard_sets: z.record(z.string(), z.number()),
      days: z.record(z.string(), z.int()),
      cluster_reps: z.number(),
      mean_reserve: z.number().nullable(),
      lighter: z.boolean(),
    }),
  ),
});

export type ReviewJson = z.infer<typeof reviewSchema>;
