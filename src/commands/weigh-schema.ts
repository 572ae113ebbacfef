import * as z from 'zod';

/** What `weigh --json` prints. Masses are numbers in `unit`. */
export const weighSchema = z.object({
  schema: z.literal(1),
  unit: z.enum(['kg', 'lb']),
  date: z.iso.date(),
  mass: z.number(),
  trend: z.number().nullable(),
});

export type WeighJson = z.infer<typeof weighSchema>;
