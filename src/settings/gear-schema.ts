import * as z from 'zod';
import { type Gear, STATIONS } from '../training/gear.ts';

const quantity = z.strictObject({
  amount: z.number().min(0).max(1000),
  unit: z.enum(['kg', 'lb']),
});
const name = z.string().min(1).max(40);
const count = z.int().min(0).max(200);

/** What the lifter owns, as settings and journal hold it. */
export const gearSchema: z.ZodType<Gear> = z.strictObject({
  unit: z.enum(['kg', 'lb']),
  bars: z.array(z.strictObject({ name, mass: quantity, collars: quantity })),
  plates: z.array(z.strictObject({ stamped: quantity, count, measured: quantity.exactOptional() })),
  dumbbells: z.array(z.strictObject({ stamped: quantity, count })),
  handles: z.array(z.strictObject({ mass: quantity, count })),
  stacks: z.array(z.strictObject({ name, lowest: quantity, step: quantity, highest: quantity })),
  belt: z.boolean(),
  bands: z.array(z.strictObject({ name, assistance: quantity })),
  freeStep: quantity,
  safeties: z.boolean(),
  stations: z.array(z.enum(STATIONS)).exactOptional(),
});
