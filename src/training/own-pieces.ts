import type { Bar, DumbbellHandle, Gear, PlateKind } from './gear.ts';
import { type Mass, massOf, plus, type Quantity } from './mass.ts';
import type { Piece } from './piece-sums.ts';

/** What one plate really weighs. */
export const plateQuantity = (plate: PlateKind): Quantity => plate.measured ?? plate.stamped;

/** Plates owned, the heaviest first, so that every list of plates is in the order of loading. */
export function platesOf(gear: Gear): readonly PlateKind[] {
  return [...gear.plates].sort((a, b) => massOf(plateQuantity(b)) - massOf(plateQuantity(a)));
}

/** Plates as they go on both ends of so many bars at once: a piece is one plate on each side of one bar. */
export function pairsOf(plates: readonly PlateKind[], bars: 1 | 2): readonly Piece[] {
  return plates.map((plate) => {
    const { amount, unit } = plateQuantity(plate);
    return { one: { amount: 2 * amount, unit }, count: Math.floor(plate.count / (2 * bars)) };
  });
}

/** Plates one by one, as they hang from a belt. */
export function singlesOf(plates: readonly PlateKind[]): readonly Piece[] {
  return plates.map((plate) => ({ one: plateQuantity(plate), count: plate.count }));
}

export const bandsOf = ({ bands }: Gear): readonly Piece[] =>
  bands.map(({ assistance }) => ({ one: assistance, count: 1 }));

/** The bar of that name, or the first one for null; undefined where it is not owned. */
export function barOf({ bars }: Gear, name: string | null): Bar | undefined {
  return name === null ? bars[0] : bars.find((bar) => bar.name === name);
}

/** Mass of the bar with both collars and nothing on it. */
export const emptyMass = (bar: Bar): Mass => plus(massOf(bar.mass), massOf(bar.collars));

export const handlesOf = ({ handles }: Gear, hands: 1 | 2): readonly DumbbellHandle[] =>
  handles.filter(({ count }) => count >= hands);

export const fixedOf = ({ dumbbells }: Gear, hands: 1 | 2): readonly Mass[] =>
  dumbbells.filter(({ count }) => count >= hands).map(({ stamped }) => massOf(stamped));
