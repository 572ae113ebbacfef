import * as z from 'zod';

/** What `estimate --json` prints. Masses are numbers in `unit`. */
export const estimateSchema = z.object({
  schema: z.literal(1),
  unit: z.enum(['kg', 'lb']),
  load: z.number(),
  reps: z.int(),
  reserve: z.int(),
  reps_to_failure: z.int(),
  e1rm: z.number().nullable().meta({ description: 'null above 15 reps to failure' }),
  formula: z.string(),
  limits: z.string(),
  loads: z
    .array(
      z.object({
        reps: z.int(),
        estimate: z.number().meta({ description: 'load that could be done so often and no more' }),
        share: z.number().meta({ description: 'of the e1RM' }),
        loadable: z
          .number()
          .nullable()
          .meta({ description: 'heaviest not above it that the bar can be loaded to' }),
      }),
    )
    .meta({ description: 'for 1 to 12 reps with the same reps in reserve' }),
});

export type EstimateJson = z.infer<typeof estimateSchema>;
