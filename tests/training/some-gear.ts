import fc from 'fast-check';
import type { Gear, PlateKind } from '../../src/training/gear.ts';
import { massOf, type Quantity } from '../../src/training/mass.ts';

export const kg = (amount: number): Quantity => ({ amount, unit: 'kg' });
export const lb = (amount: number): Quantity => ({ amount, unit: 'lb' });

/** So many plates of each stamp. */
export const plates = (count: number, ...stamps: readonly Quantity[]): PlateKind[] =>
  stamps.map((stamped) => ({ stamped, count }));

/** A 20 kg bar, no collars, nothing else but what `changes` says. */
export function someGear(changes: Partial<Gear> = {}): Gear {
  return {
    unit: 'kg',
    bars: [{ name: 'bar', mass: kg(20), collars: kg(0) }],
    plates: [],
    dumbbells: [],
    handles: [],
    stacks: [],
    belt: false,
    bands: [],
    freeStep: kg(2.5),
    safeties: false,
    ...changes,
  };
}

const STAMPS: readonly Quantity[] = [
  ...[25, 20, 15, 10, 5, 2.5, 1.25, 0.5].map(kg),
  ...[45, 35, 25, 10, 5, 2.5, 1.25].map(lb),
];

/** Few plates of both units, some running out, some weighed: small enough to try every way. */
export const anyPlates: fc.Arbitrary<PlateKind[]> = fc.uniqueArray(
  fc
    .record({
      stamped: fc.constantFrom(...STAMPS),
      count: fc.integer({ min: 0, max: 7 }),
      off: fc.option(fc.integer({ min: -300, max: 300 }), { nil: 0, freq: 3 }),
    })
    .map(({ stamped, count, off }) =>
      off === 0
        ? { stamped, count }
        : { stamped, count, measured: { ...stamped, amount: stamped.amount * (1 + off / 10_000) } },
    ),
  { maxLength: 5, selector: ({ stamped }) => `${stamped.amount} ${stamped.unit}` },
);

/** Every way to put plates on `bars` bars, as plates of one side, by trying them all. */
export function everySide(owned: readonly PlateKind[], bars: 1 | 2): PlateKind[][] {
  let sides: PlateKind[][] = [[]];
  for (const kind of owned) {
    const most = Math.floor(kind.count / 2 / bars);
    sides = sides.flatMap((side) =>
      Array.from({ length: most + 1 }, (_, n) => [...side, ...Array<PlateKind>(n).fill(kind)]),
    );
  }
  return sides;
}

/** Both sides together, each pair rounded to the microgram once per kind. */
export function bothSides(side: readonly PlateKind[]): number {
  const counts = new Map<PlateKind, number>();
  for (const plate of side) counts.set(plate, (counts.get(plate) ?? 0) + 2);
  return [...counts].reduce((sum, [{ measured, stamped }, count]) => {
    const { amount, unit } = measured ?? stamped;
    return sum + massOf({ amount: amount * count, unit });
  }, 0);
}
