import * as z from 'zod';
import { once } from '../text/once.ts';
import { GEAR_LIMITS, type Gear, STATIONS } from '../training/gear.ts';

/** What the lifter owns, as settings and journal hold it. */
export const gearSchema = once((): z.ZodType<Gear> => {
  const quantity = z.strictObject({
    amount: z.number().min(0).max(GEAR_LIMITS.amount),
    unit: z.enum(['kg', 'lb']),
  });
  const name = z.string().min(1).max(GEAR_LIMITS.name);
  const count = z.int().min(0).max(GEAR_LIMITS.pieces);
  const kinds = <Kind extends z.ZodType>(kind: Kind) => z.array(kind).max(GEAR_LIMITS.kinds);
  return z.strictObject({
    unit: z.enum(['kg', 'lb']),
    bars: kinds(z.strictObject({ name, mass: quantity, collars: quantity })),
    plates: kinds(z.strictObject({ stamped: quantity, count, measured: quantity.exactOptional() })),
    dumbbells: kinds(z.strictObject({ stamped: quantity, count })),
    handles: kinds(z.strictObject({ mass: quantity, count })),
    stacks: kinds(z.strictObject({ name, lowest: quantity, step: quantity, highest: quantity })),
    belt: z.boolean(),
    bands: kinds(z.strictObject({ name, assistance: quantity })),
    freeStep: quantity,
    safeties: z.boolean(),
    stations: z.array(z.enum(STATIONS)).exactOptional(),
  });
});
