import type { Gear } from './gear.ts';
import type { Quantity, Unit } from './mass.ts';

/** What a home gym often holds. Common practice; the lifter corrects it. */
interface HomeGym {
  readonly bar: number;
  /** Plate and how many are owned. */
  readonly plates: readonly (readonly [stamped: number, count: number])[];
  /** One of a pair. */
  readonly dumbbells: readonly number[];
  readonly handle: number;
  readonly bands: Readonly<Record<string, number>>;
  readonly freeStep: number;
}

const HOME_GYMS: Readonly<Record<Unit, HomeGym>> = {
  kg: {
    bar: 20,
    plates: [
      [20, 6],
      [10, 4],
      [5, 4],
      [2.5, 4],
      [1.25, 4],
    ],
    dumbbells: [3, 4, 5, 6, 7, 8, 9, 10],
    handle: 2,
    bands: { 'light band': 10, 'medium band': 20, 'heavy band': 35 },
    freeStep: 2.5,
  },
  lb: {
    bar: 45,
    plates: [
      [45, 6],
      [25, 4],
      [10, 4],
      [5, 4],
      [2.5, 4],
    ],
    dumbbells: [5, 8, 10, 12, 15, 18, 20],
    handle: 5,
    bands: { 'light band': 20, 'medium band': 45, 'heavy band': 75 },
    freeStep: 5,
  },
};

/**
 * Gear to begin with, until the lifter says what they own: a bar with plates for every 2.5 kg
 * (5 lb), light pairs of dumbbells, two handles to load, a belt and bands. No safeties: they are
 * not assumed of anyone.
 */
export function defaultGear(unit: Unit): Gear {
  const gym = HOME_GYMS[unit];
  const of = (amount: number): Quantity => ({ amount, unit });
  return {
    unit,
    bars: [{ name: 'bar', mass: of(gym.bar), collars: of(0) }],
    plates: gym.plates.map(([stamped, count]) => ({ stamped: of(stamped), count })),
    dumbbells: gym.dumbbells.map((stamped) => ({ stamped: of(stamped), count: 2 })),
    handles: [{ mass: of(gym.handle), count: 2 }],
    stacks: [],
    belt: true,
    bands: Object.entries(gym.bands).map(([name, amount]) => ({ name, assistance: of(amount) })),
    freeStep: of(gym.freeStep),
    safeties: false,
  };
}
