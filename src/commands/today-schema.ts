import * as z from 'zod';

const range = z.tuple([z.int(), z.int()]);
const seconds = z.object({ from: z.number(), to: z.number() });
const reason = z.object({
  rule: z.string(),
  text: z.string(),
  facts: z.record(z.string(), z.unknown()),
  source: z.string(),
});

/**
 * What `today --json` prints. Other tools rely on it: add keys, never change these. Masses are
 * numbers in `unit`; keys are always there, null rather than absent.
 */
export const todaySchema = z.object({
  schema: z.literal(1),
  program: z.string(),
  day: z.string(),
  date: z.iso.date(),
  unit: z.enum(['kg', 'lb']),
  minutes: z.int(),
  state: z.enum(['due', 'open', 'done-today']).meta({
    description: 'open: a session was begun and not closed; it is what training goes on with',
  }),
  session: z.string().nullable().meta({ description: 'id of the open session' }),
  lighter: z.boolean(),
  warnings: z.array(z.object({ rule: z.string(), text: z.string() })),
  short: z
    .object({ minutes: z.int(), cut: z.array(reason.omit({ source: true })) })
    .nullable()
    .meta({ description: 'a day cut to the minutes there are: what was cut and why' }),
  exercises: z.array(
    z.object({
      lift: z.string(),
      name: z.string(),
      track: z.string(),
      style: z.enum(['straight', 'cluster']),
      load: z.number().nullable().meta({ description: 'null: the lifter is asked for it' }),
      basis: z.enum(['total', 'hand', 'stack', 'added', 'load']).meta({
        description: 'what load means; added is negative for assistance',
      }),
      system: z.number().nullable().meta({
        description: 'what is really lifted, body share included; null when not known',
      }),
      bar: z.object({ name: z.string(), mass: z.number(), unit: z.enum(['kg', 'lb']) }).nullable(),
      plates: z.array(z.number()).nullable().meta({
        description: 'one side, heaviest first, as stamped; null where plates do not apply',
      }),
      plate_units: z.array(z.enum(['kg', 'lb'])).nullable(),
      per_side: z.boolean(),
      sets: z.array(
        z.object({
          aim: z.int(),
          reps: range.nullable(),
          seconds: range.nullable(),
          reserve: range.nullable(),
          expected: z.number().nullable().meta({
            description:
              'reps that most likely leave the low end of reserve; null where too little is known',
          }),
          odds: z.number().nullable().meta({
            description: 'probability, 0 to 1, that the aim is reached with that reserve',
          }),
        }),
      ),
      sets_planned: z.int(),
      cluster: z.object({ most_sets: z.int(), rest: seconds, minis_aim: z.int() }).nullable(),
      rest: seconds,
      in_turn_with: z
        .array(z.string())
        .meta({ description: 'names of the exercises whose sets alternate with these' }),
      test_set: z.boolean().meta({ description: 'the last set may go on until a rep fails' }),
      warm_up: z.array(
        z.object({
          load: z.number(),
          reps: z.int(),
          plates: z.array(z.number()).nullable(),
        }),
      ),
      move: z.enum(['start', 'up', 'hold', 'ease', 'return']),
      why: z.array(reason),
      last: z
        .object({
          date: z.iso.date(),
          load: z.number().meta({ description: 'of the first set' }),
          loads: z.array(z.number()).meta({ description: 'of each set' }),
          reps: z.array(z.int()),
          reserve: z.array(z.number().nullable()),
        })
        .nullable(),
    }),
  ),
});

export type TodayJson = z.infer<typeof todaySchema>;
