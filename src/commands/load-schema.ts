import * as z from 'zod';

const unit = z.enum(['kg', 'lb']);
const loaded = z.object({
  total: z.number(),
  plates: z.array(z.number()).meta({ description: 'one side, heaviest first, as stamped' }),
  plate_units: z.array(unit),
});

/** What `load --json` prints. Totals are numbers in `unit`. */
export const loadSchema = z.object({
  schema: z.literal(1),
  unit,
  wish: z.number(),
  bar: z.object({ name: z.string(), mass: z.number(), unit }),
  exact: loaded.nullable(),
  below: loaded.nullable().meta({ description: 'nearest that can be made; null when exact' }),
  above: loaded.nullable().meta({ description: 'nearest that can be made; null when exact' }),
});

export type LoadJson = z.infer<typeof loadSchema>;
