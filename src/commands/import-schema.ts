import * as z from 'zod';

/** What `holdfast import --json` prints. */
export const importSchema = z.object({
  schema: z.literal(1),
  /** False where it was only tried. */
  written: z.boolean(),
  /** What `amend` takes to take all of it back; null where nothing was added. */
  id: z.string().nullable(),
  sessions: z.number().int(),
  weigh_ins: z.number().int(),
  /** Rows, or events, that were here already. */
  known: z.number().int(),
  /** Unlikely weigh-ins that were left out. */
  doubtful: z.number().int(),
});

export type ImportJson = z.infer<typeof importSchema>;
