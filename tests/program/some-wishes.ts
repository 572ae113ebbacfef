import type { Wishes } from '../../src/program/draft/wishes.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { kg } from '../training/some-gear.ts';

export function someWishes(changes: Partial<Wishes> = {}): Wishes {
  return {
    name: 'Drafted',
    days: 3,
    minutes: 60,
    gear: GEARS['home gym'],
    like: [],
    without: [],
    hurts: [],
    focus: [],
    bests: [],
    unit: 'kg',
    aim: 'cut',
    bodyMass: null,
    from: null,
    ...changes,
  };
}

const home = defaultGear('kg');
const nothing: Gear = {
  ...home,
  bars: [],
  plates: [],
  dumbbells: [],
  handles: [],
  bands: [],
  belt: false,
};

/** What lifters own. */
export const GEARS = {
  'home gym': home,
  'home gym in pounds': defaultGear('lb'),
  'home gym with safeties': { ...home, safeties: true },
  'bar and plates': { ...home, dumbbells: [], handles: [], bands: [], safeties: true },
  dumbbells: {
    ...nothing,
    dumbbells: [4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24].map((amount) => ({
      stamped: kg(amount),
      count: 2,
    })),
  },
  gym: {
    ...home,
    safeties: true,
    stacks: [{ name: 'cable', lowest: kg(2.5), step: kg(2.5), highest: kg(80) }],
  },
  'body weight': nothing,
} as const satisfies Readonly<Record<string, Gear>>;

export const DAYS = [2, 3, 4] as const;
export const MINUTES = [30, 45, 60, 75, 90] as const;
