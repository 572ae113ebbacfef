import * as z from 'zod';

/** What `holdfast amend --json` prints. */
export const amendSchema = z.object({
  schema: z.literal(1),
  id: z.string(),
  did: z.enum(['corrected', 'deleted', 'restored']),
  /** False where it was only tried. */
  written: z.boolean(),
  what: z.string(),
  /** In words; null where it was not there. */
  before: z.string().nullable(),
  after: z.string().nullable(),
});

export type AmendJson = z.infer<typeof amendSchema>;
