import { expect, test } from 'vitest';
import { bodyGearFor, NOTHING_LOADED, setUp } from '../../src/training/equipment.ts';
import { kilograms, NO_MASS } from '../../src/training/mass.ts';
import { kg, plates, someGear } from './some-gear.ts';

const gear = someGear({
  belt: true,
  plates: [...plates(1, kg(5)), ...plates(4, kg(2.5), kg(1.25))],
  bands: [
    { name: 'light', assistance: kg(10) },
    { name: 'medium', assistance: kg(20) },
    { name: 'heavy', assistance: kg(30) },
  ],
});

const amounts = (setting: number) =>
  bodyGearFor(gear, kilograms(setting))?.plates.map(({ stamped }) => stamped.amount);

test('a belt takes single plates, the fewest of them', () => {
  expect(amounts(7.5)).toEqual([5, 2.5]);
  expect(amounts(3.75)).toEqual([2.5, 1.25]);
  expect(amounts(100)).toBeUndefined();
});

test('assistance is the fewest bands', () => {
  expect(bodyGearFor(gear, kilograms(-30))?.bands.map(({ name }) => name)).toEqual(['heavy']);
  expect(bodyGearFor(gear, kilograms(-40))?.bands.map(({ name }) => name)).toEqual([
    'light',
    'heavy',
  ]);
  expect(bodyGearFor(gear, kilograms(-15))).toBeNull();
});

test('body weight alone takes nothing', () => {
  expect(bodyGearFor(someGear(), NO_MASS)).toEqual({ plates: [], bands: [] });
});

test('without a belt no plate can be carried', () => {
  expect(bodyGearFor({ ...gear, belt: false }, kilograms(5))).toBeNull();
});

test('one band is put on as bands are, a belt as plates', () => {
  const need = { loading: 'bodyweight', pattern: 'vertical-pull', hands: 2, bar: null, step: null };
  const on = (setting: number) =>
    setUp(need as Parameters<typeof setUp>[0], kilograms(setting), gear, NOTHING_LOADED);
  expect(on(-10)).toMatchObject({ on: 'bands', bands: [{ name: 'light' }] });
  expect(on(-40)).toMatchObject({ on: 'bands', bands: [{ name: 'light' }, { name: 'heavy' }] });
  expect(on(7.5)?.on).toBe('belt');
  expect(on(0)?.on).not.toBe('bands');
});

test('a bar gives its plates up for the belt only where there are not enough for both', () => {
  const few = someGear({ belt: true, plates: plates(4, kg(2.5)) });
  const need = (loading: 'barbell' | 'bodyweight') =>
    ({ loading, hands: 2, bar: null, step: null }) as const;
  // Two of the four plates are on the bar.
  const bar = setUp(need('barbell'), kilograms(25), few, NOTHING_LOADED);
  const belt = (load: number) =>
    setUp(need('bodyweight'), kilograms(load), few, bar!.after)?.strip.length;
  expect([2.5, 5, 7.5, 10].map(belt)).toEqual([0, 0, 1, 1]);
});
