import type { Gear } from '../../src/training/gear.ts';

const kg = (amount: number) => ({ amount, unit: 'kg' }) as const;
const pairs = (...amounts: readonly number[]) =>
  amounts.map((amount) => ({ stamped: kg(amount), count: 4 }));

/** A 20 kg bar and plates down to 1.25 kg: every 2.5 kg can be loaded. */
export function aGear(changes: Partial<Gear> = {}): Gear {
  return {
    unit: 'kg',
    bars: [{ name: 'bar', mass: kg(20), collars: kg(0) }],
    plates: pairs(25, 20, 15, 10, 5, 2.5, 1.25),
    dumbbells: [],
    handles: [],
    stacks: [],
    belt: true,
    bands: [],
    freeStep: kg(2.5),
    safeties: true,
    ...changes,
  };
}

/** A pair of each of these dumbbells, in kg. */
export const dumbbells = (...amounts: readonly number[]): Gear['dumbbells'] =>
  amounts.map((amount) => ({ stamped: kg(amount), count: 2 }));
