import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NOTHING_LOADED, setUp } from '../../src/training/equipment.ts';
import {
  isLoadable,
  type LoadNeed,
  type Loads,
  loadsFor,
  nearest,
  nextAbove,
  nextBelow,
} from '../../src/training/loads.ts';
import {
  kilograms,
  type Mass,
  massOf,
  micrograms,
  minus,
  NO_MASS,
  pounds,
} from '../../src/training/mass.ts';
import { anyPlates, bothSides, everySide, kg, lb, plates, someGear } from './some-gear.ts';

const barbell: LoadNeed = { loading: 'barbell', hands: 1, bar: null, step: null };
const pair: LoadNeed = { loading: 'dumbbell', hands: 2, bar: null, step: null };
const oneHand: LoadNeed = { ...pair, hands: 1 };
const body: LoadNeed = { ...barbell, loading: 'bodyweight' };
const free: LoadNeed = { ...barbell, loading: 'free' };
const band: LoadNeed = { ...barbell, loading: 'band' };
const stack: LoadNeed = { ...barbell, loading: 'stack' };

/** Every load from the lightest up, in kg; the first `most` of them. */
function all(loads: Loads, most = 40): number[] {
  const found: number[] = [];
  let load: Mass | null = loads.lightest;
  while (load !== null && found.length < most) {
    found.push(load / 1e9);
    load = nextAbove(loads, load);
  }
  return found;
}

describe('bands', () => {
  const bands = [
    { name: 'light', assistance: kg(10) },
    { name: 'medium', assistance: kg(20) },
    { name: 'heavy', assistance: kg(35) },
  ];

  test('pull alone or together, one of them at least', () => {
    const gear = someGear({ bands });
    expect(all(loadsFor(gear, band))).toEqual([10, 20, 30, 35, 45, 55, 65]);
    expect(loadsFor(gear, band).atOrBelow(kilograms(9))).toBeNull();
    expect(loadsFor(gear, band).heaviest).toBe(kilograms(65));
  });

  test('are named with the load', () => {
    const made = setUp(band, kilograms(45), someGear({ bands }), NOTHING_LOADED);
    expect(made?.bands.map(({ name }) => name)).toEqual(['light', 'heavy']);
    expect(setUp(band, kilograms(12), someGear({ bands }), NOTHING_LOADED)).toBeNull();
  });

  test('without any, loads go by the free step', () => {
    expect(all(loadsFor(someGear({ bands: [] }), band), 2)).toEqual([2.5, 5]);
  });
});

describe('a barbell', () => {
  test('is the bar, its collars and pairs of plates', () => {
    const gear = someGear({
      bars: [{ name: 'bar', mass: kg(20), collars: kg(5) }],
      plates: plates(2, kg(10), kg(2.5)),
    });
    expect(all(loadsFor(gear, barbell))).toEqual([25, 30, 45, 50]);
  });

  test('leaves a plate without a partner on the floor', () => {
    const gear = someGear({ plates: [...plates(3, kg(5)), ...plates(1, kg(10))] });
    expect(all(loadsFor(gear, barbell))).toEqual([20, 30]);
  });

  test('is weighed by what the scale said of its plates', () => {
    const gear = someGear({ plates: [{ stamped: kg(10), count: 2, measured: kg(10.2) }] });
    expect(all(loadsFor(gear, barbell))).toEqual([20, 40.4]);
  });

  test('mixes plates in kg and lb exactly', () => {
    const gear = someGear({ plates: [...plates(2, lb(45)), ...plates(2, kg(1.25))] });
    const loads = loadsFor(gear, barbell);
    expect(isLoadable(loads, micrograms(20_000_000_000 + 2 * 20_411_656_650))).toBe(true);
    expect(loads.heaviest).toBe(20_000_000_000 + 40_823_313_300 + 2_500_000_000);
  });

  test('two of 1.25 lb are 2.5 lb, though one is not a whole number of micrograms', () => {
    const gear = someGear({
      bars: [{ name: 'bar', mass: lb(45), collars: lb(0) }],
      plates: plates(4, lb(1.25)),
    });
    const loads = loadsFor(gear, barbell);
    expect(isLoadable(loads, pounds(47.5))).toBe(true);
    expect(isLoadable(loads, pounds(50))).toBe(true);
  });

  test('of another name is asked for by it', () => {
    const gear = someGear({
      bars: [
        { name: 'bar', mass: kg(20), collars: kg(0) },
        { name: 'short bar', mass: kg(10), collars: kg(0) },
      ],
    });
    expect(loadsFor(gear, { ...barbell, bar: 'short bar' }).lightest).toBe(kilograms(10));
    expect(loadsFor(gear, barbell).lightest).toBe(kilograms(20));
  });
});

describe('dumbbells', () => {
  test('fixed ones need one for each hand', () => {
    const gear = someGear({
      dumbbells: [
        { stamped: kg(10), count: 2 },
        { stamped: kg(14), count: 1 },
      ],
    });
    expect(all(loadsFor(gear, pair))).toEqual([10]);
    expect(all(loadsFor(gear, oneHand))).toEqual([10, 14]);
  });

  test('two handles share the plates: four of a kind for a step', () => {
    const gear = someGear({
      handles: [{ mass: kg(2), count: 2 }],
      plates: [...plates(4, kg(2.5)), ...plates(2, kg(1.25))],
    });
    expect(all(loadsFor(gear, pair))).toEqual([2, 7]);
    expect(all(loadsFor(gear, oneHand))).toEqual([2, 4.5, 7, 9.5, 12, 14.5]);
  });

  test('one handle is no pair', () => {
    const gear = someGear({
      handles: [{ mass: kg(2), count: 1 }],
      dumbbells: [{ stamped: kg(5), count: 2 }],
    });
    expect(all(loadsFor(gear, pair))).toEqual([5]);
  });
});

describe('a stack', () => {
  const stacks = [
    { name: 'pulley', lowest: kg(5), step: kg(2.5), highest: kg(15) },
    { name: 'row', lowest: kg(10), step: kg(10), highest: kg(30) },
  ];

  test('goes by its pins', () => {
    const gear = someGear({ stacks });
    expect(all(loadsFor(gear, { ...stack, stack: 'pulley' }))).toEqual([5, 7.5, 10, 12.5, 15]);
  });

  test('without a name is any that is owned', () => {
    expect(all(loadsFor(someGear({ stacks }), stack))).toEqual([5, 7.5, 10, 12.5, 15, 20, 30]);
  });

  test('ends at the last pin under its highest load', () => {
    const gear = someGear({ stacks: [{ ...stacks[0]!, highest: kg(14) }] });
    const loads = loadsFor(gear, stack);
    expect(loads.heaviest).toBe(kilograms(12.5));
    expect(loads.atOrBelow(kilograms(200))).toBe(kilograms(12.5));
    expect(loads.atOrAbove(kilograms(13))).toBeNull();
  });
});

describe('a body weight lift', () => {
  test('is set with nothing, plates on the belt, or bands that take weight off', () => {
    const gear = someGear({
      belt: true,
      plates: plates(1, kg(5), kg(2.5)),
      bands: [
        { name: 'light', assistance: kg(10) },
        { name: 'heavy', assistance: kg(25) },
      ],
    });
    expect(all(loadsFor(gear, body))).toEqual([-35, -25, -10, 0, 2.5, 5, 7.5]);
  });

  test('has one setting without a belt and bands', () => {
    const loads = loadsFor(someGear({ plates: plates(4, kg(5)) }), body);
    expect(all(loads)).toEqual([0]);
    expect(loads.heaviest).toBe(NO_MASS);
  });
});

describe('steps in place of gear', () => {
  test('free loads are multiples of the free step, without an end', () => {
    const loads = loadsFor(someGear({ freeStep: kg(4) }), free);
    expect(all(loads, 4)).toEqual([4, 8, 12, 16]);
    expect(loads.heaviest).toBeNull();
    expect(loads.atOrBelow(kilograms(3))).toBeNull();
  });

  test('a barbell goes up from its bar', () => {
    const loads = loadsFor(someGear(), { ...barbell, step: kilograms(1) });
    expect(all(loads, 4)).toEqual([20, 21, 22, 23]);
  });

  test('a body weight lift goes up from nothing, and down by the bands owned', () => {
    const gear = someGear({ bands: [{ name: 'light', assistance: kg(10) }] });
    const loads = loadsFor(gear, { ...body, step: kilograms(5) });
    expect(all(loads, 4)).toEqual([-10, 0, 5, 10]);
  });

  test('eight steps of 1.25 lb are 10 lb', () => {
    const loads = loadsFor(someGear(), { ...free, step: pounds(1.25) });
    expect(isLoadable(loads, pounds(10))).toBe(true);
    expect(nextBelow(loads, pounds(10))).toBe(pounds(8.75));
    expect(loads.atOrAbove(pounds(3.75))).toBe(pounds(3.75));
  });

  test('serve where the gear has nothing for the lift', () => {
    const gear = someGear({ bars: [] });
    expect(all(loadsFor(gear, barbell), 3)).toEqual([2.5, 5, 7.5]);
    expect(all(loadsFor(gear, pair), 3)).toEqual([2.5, 5, 7.5]);
    expect(all(loadsFor(someGear(), { ...barbell, bar: 'trap bar' }), 2)).toEqual([2.5, 5]);
  });

  test('a step of nothing does not stand still', () => {
    expect(all(loadsFor(someGear({ freeStep: kg(0) }), free), 2)).toEqual([1, 2]);
  });
});

describe('near a wish', () => {
  const loads = loadsFor(someGear({ plates: plates(2, kg(5), kg(2.5)) }), barbell);

  test('the lighter of two equally near loads is the nearest', () => {
    expect(nearest(loads, kilograms(22.5))).toBe(kilograms(20));
    expect(nearest(loads, kilograms(22.6))).toBe(kilograms(25));
  });

  test('past the ends it is the end', () => {
    expect(nearest(loads, kilograms(1))).toBe(kilograms(20));
    expect(nearest(loads, kilograms(900))).toBe(kilograms(35));
    expect(loads.atOrBelow(kilograms(19))).toBeNull();
    expect(loads.atOrAbove(kilograms(36))).toBeNull();
  });
});

describe('any gear', () => {
  const wish = fc.integer({ min: -5_000_000_000, max: 260_000_000_000 }).map(micrograms);

  test('a barbell can be loaded to what trying every way gives, and to nothing else', () => {
    fc.assert(
      fc.property(anyPlates, wish, (owned, wished) => {
        const loads = loadsFor(someGear({ plates: owned }), barbell);
        const tried = everySide(owned, 1).map((side) => 20_000_000_000 + bothSides(side));
        const below = tried.filter((load) => load <= wished);
        const above = tried.filter((load) => load >= wished);
        expect(loads.atOrBelow(wished)).toBe(below.length ? Math.max(...below) : null);
        expect(loads.atOrAbove(wished)).toBe(above.length ? Math.min(...above) : null);
        expect(loads.lightest).toBe(Math.min(...tried));
        expect(loads.heaviest).toBe(Math.max(...tried));
      }),
      { numRuns: 300 },
    );
  });

  test('a pair of handles can be loaded to what trying every way gives', () => {
    fc.assert(
      fc.property(anyPlates, wish, (owned, wished) => {
        const gear = someGear({ plates: owned, handles: [{ mass: kg(2), count: 2 }] });
        const tried = everySide(owned, 2).map((side) => 2_000_000_000 + bothSides(side));
        const below = tried.filter((load) => load <= wished);
        expect(loadsFor(gear, pair).atOrBelow(wished)).toBe(
          below.length ? Math.max(...below) : null,
        );
      }),
      { numRuns: 100 },
    );
  });

  test('every load that is offered near a wish can be loaded, on its own side of the wish', () => {
    const need = fc.constantFrom(barbell, pair, oneHand, body, free, stack, {
      ...barbell,
      step: pounds(1.25),
    });
    const gear = anyPlates.map((owned) =>
      someGear({
        plates: owned,
        belt: true,
        handles: [{ mass: lb(5), count: 2 }],
        dumbbells: [{ stamped: kg(10), count: 2 }],
        stacks: [{ name: 'pulley', lowest: kg(5), step: lb(10), highest: kg(80) }],
        bands: [{ name: 'light', assistance: kg(12) }],
      }),
    );
    fc.assert(
      fc.property(gear, need, wish, (owned, wanted, wished) => {
        const loads = loadsFor(owned, wanted);
        const below = loads.atOrBelow(wished);
        const above = loads.atOrAbove(wished);
        for (const load of [below, above, nearest(loads, wished), loads.lightest]) {
          if (load !== null) expect(isLoadable(loads, load)).toBe(true);
        }
        if (below !== null) expect(below).toBeLessThanOrEqual(wished);
        if (above !== null) expect(above).toBeGreaterThanOrEqual(wished);
        if (below !== null && above !== null && below < above) {
          expect(nextAbove(loads, below)).toBe(above);
          expect(nextBelow(loads, above)).toBe(below);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('asking for the unit of the display changes nothing', () => {
    fc.assert(
      fc.property(anyPlates, wish, (owned, wished) => {
        const inKg = loadsFor(someGear({ plates: owned, unit: 'kg' }), barbell);
        const inLb = loadsFor(someGear({ plates: owned, unit: 'lb' }), barbell);
        expect(inLb.atOrBelow(wished)).toBe(inKg.atOrBelow(wished));
      }),
      { numRuns: 50 },
    );
  });
});

test('a big mixed rack answers as exactly as a small one', () => {
  const gear = someGear({
    plates: [
      ...plates(6, kg(25), kg(20), kg(10), kg(5), kg(2.5), kg(1.25)),
      ...plates(6, lb(45), lb(35), lb(25), lb(10), lb(5), lb(2.5)),
    ],
  });
  const loads = loadsFor(gear, barbell);
  const below = loads.atOrBelow(kilograms(150));
  const above = loads.atOrAbove(kilograms(150));
  expect([below, above]).toEqual([kilograms(150), kilograms(150)]);
  const odd = minus(massOf(kg(150)), micrograms(1));
  expect(loads.atOrAbove(odd)).toBe(kilograms(150));
  expect(odd - (loads.atOrBelow(odd) ?? 0)).toBeLessThan(kilograms(0.05));
});
