import * as z from 'zod';

/** What `history --json` prints. Masses are numbers in `unit`. */
export const historySchema = z.object({
  schema: z.literal(1),
  unit: z.enum(['kg', 'lb']),
  results: z.array(
    z.object({
      session: z.string(),
      date: z.iso.date(),
      program: z.string(),
      day: z.string(),
      lift: z.string(),
      name: z.string(),
      track: z.string(),
      style: z.enum(['straight', 'cluster']),
      counts: z.enum(['reps', 'seconds']),
      move: z.enum(['start', 'up', 'hold', 'ease', 'return']),
      e1rm: z
        .number()
        .nullable()
        .meta({ description: 'best of the session; null where none tells' }),
      strength: z.number().nullable().meta({
        description: 'one-repetition maximum that all sessions up to that day tell together',
      }),
      strength_low: z.number().nullable().meta({ description: 'low end of its 90 % interval' }),
      strength_high: z.number().nullable(),
      finished: z.boolean(),
      pain: z.boolean(),
      lighter: z.boolean(),
      sets: z.array(
        z.object({
          id: z.string().meta({ description: 'what amend takes' }),
          load: z.number(),
          count: z.int(),
          reserve: z.number().nullable(),
        }),
      ),
    }),
  ),
  weigh_ins: z.array(
    z.object({
      id: z.string().meta({ description: 'what amend takes' }),
      date: z.iso.date(),
      mass: z.number(),
    }),
  ),
  waists: z.array(
    z.object({
      id: z.string().meta({ description: 'what amend takes' }),
      date: z.iso.date(),
      waist: z.number(),
      unit: z.enum(['cm', 'in']),
    }),
  ),
});

export type HistoryJson = z.infer<typeof historySchema>;
