import * as z from 'zod';
import { gearSchema } from '../settings/gear-schema.ts';

/** What `gear --json` prints. */
export const gearJsonSchema = z.object({
  schema: z.literal(1),
  set: z.boolean().meta({ description: 'false: a usual home gym, as nothing was said yet' }),
  gear: gearSchema(),
});

export type GearJson = z.infer<typeof gearJsonSchema>;
