import * as z from 'zod';

/** What `weigh --json` prints. Masses are numbers in `unit`, the waist one in `waist_unit`. */
export const weighSchema = z.object({
  schema: z.literal(1),
  unit: z.enum(['kg', 'lb']),
  date: z.iso.date(),
  mass: z.number().nullable().meta({ description: 'null where only the waist was measured' }),
  trend: z.number().nullable(),
  waist: z.number().nullable(),
  waist_unit: z.enum(['cm', 'in']),
});

export type WeighJson = z.infer<typeof weighSchema>;
