import * as z from 'zod';

const mass = z.number().meta({ description: 'in the unit named at the top' });

/**
 * What `export --as json` writes. Sessions and weigh-ins are for reading; `events` are the facts
 * they were folded from, and what an import takes. Add keys, never change these.
 */
export const historySchema = z.object({
  schema: z.literal(1),
  kind: z.literal('holdfast-history'),
  made: z.iso.date(),
  unit: z.enum(['kg', 'lb']),
  sessions: z.array(
    z.object({
      id: z.string(),
      start: z.iso.datetime(),
      end: z.iso.datetime(),
      date: z.iso.date().meta({ description: 'local date at the start' }),
      program: z.string(),
      day: z.string(),
      closed: z.boolean(),
      exercises: z.array(
        z.object({
          lift: z.string(),
          name: z.string(),
          track: z.string(),
          style: z.enum(['straight', 'cluster']),
          counts: z.enum(['reps', 'seconds']),
          move: z.enum(['start', 'up', 'hold', 'ease', 'return']),
          finished: z.boolean(),
          pain: z.boolean(),
          lighter: z.boolean(),
          sets: z.array(
            z.object({
              load: mass,
              count: z.int().meta({ description: 'reps or seconds' }),
              reserve: z.number().nullable(),
              entered: z.enum(['as-planned', 'confirmed', 'typed']),
              e1rm: mass.nullable(),
            }),
          ),
        }),
      ),
    }),
  ),
  weigh_ins: z.array(z.object({ date: z.iso.date(), mass })),
  decisions: z.array(
    z.object({
      date: z.iso.date(),
      rule: z.string(),
      answer: z.string(),
      subject: z.string().nullable(),
    }),
  ),
  events: z.array(z.looseObject({ id: z.string(), type: z.string() })),
});

export type HistoryJson = z.infer<typeof historySchema>;
