import * as z from 'zod';

const place = z.object({ line: z.number().int(), column: z.number().int() });

/** What `check --json` prints. */
export const checkSchema = z.object({
  schema: z.literal(1),
  file: z.string(),
  program: z.string(),
  aim: z.enum(['cut', 'maintain', 'build']),
  findings: z.array(
    z.object({
      rule: z.string(),
      severity: z.enum(['error', 'advice']),
      place: place.nullable().meta({ description: 'null for the file as a whole' }),
      text: z.string(),
      fix: z.string(),
      source: z.string(),
      accepted: z.string().nullable().meta({ description: 'the reason in the file' }),
    }),
  ),
  muscles: z.array(
    z.object({
      muscle: z.string(),
      hard_sets: z.number(),
      days: z.number(),
      direct_days: z.number(),
    }),
  ),
  weekly_sets: z.array(z.number()).length(2).meta({ description: 'fewest and most aimed at' }),
  days: z.array(z.object({ name: z.string(), minutes: z.number(), sets: z.number() })),
});

export type CheckJson = z.infer<typeof checkSchema>;
