import { defaultGear } from './default-gear.ts';
import type { Gear, Station } from './gear.ts';
import type { Unit } from './mass.ts';

/** Gear that many own, to begin with and correct. Common practice. */
export interface Kit {
  readonly name: string;
  readonly gear: (unit: Unit) => Gear;
}

const DUMBBELLS: Readonly<Record<Unit, readonly number[]>> = {
  kg: [2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24],
  lb: [5, 10, 15, 20, 25, 30, 35, 40, 45, 50],
};

const NO_BAR = { bars: [], plates: [], dumbbells: [], handles: [], belt: false } as const;
const NO_BANDS = { bands: [] } as const;

/** Of a place of which nothing was said: the body. */
export const nothingIn = (unit: Unit): Gear => ({
  ...defaultGear(unit),
  ...NO_BAR,
  ...NO_BANDS,
  stations: [],
});

const pairsIn = (unit: Unit): Gear['dumbbells'] =>
  DUMBBELLS[unit].map((amount) => ({ stamped: { amount, unit }, count: 2 }));

/** The six ready kits, the smallest first. Safeties are never taken for granted. */
export const KITS: readonly Kit[] = [
  kit('body weight and bands', [], () => NO_BAR),
  kit('bands, chin-up bar and dip station', ['chin-up bar', 'dip station'], () => NO_BAR),
  kit('dumbbells', [], (unit) => ({
    ...NO_BAR,
    ...NO_BANDS,
    dumbbells: pairsIn(unit),
  })),
  kit('dumbbells and a bench', ['bench'], (unit) => ({
    ...NO_BAR,
    ...NO_BANDS,
    dumbbells: pairsIn(unit),
  })),
  kit('rack, bar and bench', ['bench', 'rack', 'chin-up bar'], () => ({
    ...NO_BANDS,
    dumbbells: [],
    handles: [],
  })),
  kit('rack, bar, bench and dumbbells', ['bench', 'rack', 'chin-up bar'], (unit) => ({
    ...NO_BANDS,
    dumbbells: pairsIn(unit),
  })),
];

function kit(
  name: string,
  stations: readonly Station[],
  owned: (unit: Unit) => Partial<Gear>,
): Kit {
  return { name, gear: (unit) => ({ ...defaultGear(unit), ...owned(unit), stations }) };
}
