import * as z from 'zod';
import { STATIONS } from '../training/gear.ts';
import { JOINTS, LOADINGS, MUSCLES, PATTERNS } from '../training/lift.ts';

/** What `lifts --json` prints. */
export const liftsSchema = z.object({
  schema: z.literal(1),
  lifts: z.array(
    z.object({
      key: z.string(),
      name: z.string(),
      pattern: z.enum(PATTERNS),
      loading: z.enum(LOADINGS),
      kind: z.enum(['compound', 'isolation']),
      direct: z.array(z.enum(MUSCLES)),
      joints: z.array(z.enum(JOINTS)).meta({ description: 'that it loads hard' }),
      needs: z.array(z.enum(STATIONS)),
      missing: z.string().nullable().meta({ description: 'what your gear lacks for it' }),
    }),
  ),
});

export type LiftsJson = z.infer<typeof liftsSchema>;
