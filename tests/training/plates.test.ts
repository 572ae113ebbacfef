import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixedDumbbell, loadHandle } from '../../src/training/equipment.ts';
import { GEAR_LIMITS, type PlateKind } from '../../src/training/gear.ts';
import { isLoadable, loadsFor } from '../../src/training/loads.ts';
import { kilograms, massOf, micrograms } from '../../src/training/mass.ts';
import {
  type LoadedBar,
  loadBar,
  nearestBelowAndAbove,
  plateChange,
  platesHandled,
} from '../../src/training/plates.ts';
import { anyPlates, bothSides, everySide, kg, lb, plates, someGear } from './some-gear.ts';

const amounts = (side: readonly PlateKind[] | undefined): number[] | undefined =>
  side?.map(({ stamped }) => stamped.amount);

const home = someGear({
  plates: plates(4, kg(20), kg(15), kg(10), kg(5), kg(2.5), kg(1.25)),
});

/** Plates off and on at one end, counted with what lies outside them, the heaviest inside. */
function handledBetween(from: readonly PlateKind[], to: readonly PlateKind[]): number {
  let same = 0;
  while (same < from.length && same < to.length && from[same] === to[same]) same += 1;
  return from.length - same + (to.length - same);
}

describe('loading a bar', () => {
  test('is one side, the heaviest inside', () => {
    expect(amounts(loadBar(home, null, kilograms(100))?.side)).toEqual([20, 20]);
    expect(amounts(loadBar(home, null, kilograms(82.5))?.side)).toEqual([20, 10, 1.25]);
    expect(amounts(loadBar(home, null, kilograms(20))?.side)).toEqual([]);
  });

  test('takes the fewest plates, not the heaviest first', () => {
    // 30 a side: the heaviest first would be 25 + 2.5 + 2.5.
    const gear = someGear({
      plates: [...plates(2, kg(25)), ...plates(4, kg(15), kg(1.25), kg(2.5))],
    });
    expect(amounts(loadBar(gear, null, kilograms(80))?.side)).toEqual([15, 15]);
  });

  test('of several ways with as few plates takes the one that handles fewest', () => {
    const from: LoadedBar = { ...loadBar(home, null, kilograms(50))! };
    expect(amounts(from.side)).toEqual([15]);
    // 30 a side is 20 + 10 or 15 + 15.
    expect(amounts(loadBar(home, null, kilograms(80))?.side)).toEqual([20, 10]);
    expect(amounts(loadBar(home, null, kilograms(80), from)?.side)).toEqual([15, 15]);
  });

  test('counts pairs, so that what has run out is made of others', () => {
    const gear = someGear({
      plates: [...plates(2, kg(20)), ...plates(4, kg(10)), ...plates(2, kg(5))],
    });
    expect(amounts(loadBar(gear, null, kilograms(100))?.side)).toEqual([20, 10, 10]);
    expect(loadBar(gear, null, kilograms(120))).toBeNull();
  });

  test('weighs collars and mixes units', () => {
    const gear = someGear({
      bars: [{ name: 'bar', mass: lb(45), collars: kg(5) }],
      plates: [...plates(2, lb(45)), ...plates(2, kg(5))],
    });
    const total = micrograms(20_411_656_650 + 5_000_000_000 + 2 * 20_411_656_650 + 10_000_000_000);
    expect(loadBar(gear, null, total)?.side.map(({ stamped }) => stamped)).toEqual([lb(45), kg(5)]);
  });

  test('is refused for what cannot be made and for a bar not owned', () => {
    expect(loadBar(home, null, kilograms(81))).toBeNull();
    expect(loadBar(home, null, kilograms(15))).toBeNull();
    expect(loadBar(home, 'trap bar', kilograms(60))).toBeNull();
  });

  test('near a wish gives the bar under it and the bar over it', () => {
    const { below, above } = nearestBelowAndAbove(home, null, kilograms(81));
    expect([below?.total, above?.total]).toEqual([kilograms(80), kilograms(82.5)]);
    const exact = nearestBelowAndAbove(home, null, kilograms(80));
    expect(exact.below).toEqual(exact.above);
    expect(nearestBelowAndAbove(home, null, kilograms(10)).below).toBeNull();
    expect(nearestBelowAndAbove(home, null, kilograms(500)).above).toBeNull();
  });
});

describe('changing plates', () => {
  const bar = (total: number) => loadBar(home, null, kilograms(total))!;

  test('what lies outside comes off first, and goes on again', () => {
    const { off, on } = plateChange(bar(82.5), bar(85));
    expect([amounts(off), amounts(on)]).toEqual([[1.25], [2.5]]);
    const more = plateChange(bar(65), bar(102.5));
    expect([amounts(more.off), amounts(more.on)]).toEqual([[2.5], [20, 1.25]]);
  });

  test('on an empty bar everything goes on; the same load changes nothing', () => {
    expect(amounts(plateChange(null, bar(100)).on)).toEqual([20, 20]);
    expect(plateChange(bar(100), bar(100))).toEqual({ off: [], on: [] });
  });

  test('plates count as the same after they were stored and read again', () => {
    const stored = JSON.parse(JSON.stringify(bar(82.5))) as LoadedBar;
    expect(plateChange(stored, bar(82.5))).toEqual({ off: [], on: [] });
  });

  test('plates handled are counted from load to load, those that come off again more', () => {
    const handled = platesHandled(home, null, []);
    expect(handled(null, kilograms(100))).toBe(2);
    expect(handled(kilograms(100), kilograms(102.5))).toBe(1);
    expect(handled(kilograms(60), kilograms(60))).toBe(0);
    // The 10 off again, a 20 on.
    expect(handled(kilograms(40), kilograms(60))).toBe(3 + 1);
    expect(platesHandled(home, null, bar(60).side)(null, kilograms(60))).toBe(0);
  });
});

describe('dumbbell handles', () => {
  const gear = someGear({
    handles: [{ mass: kg(2), count: 2 }],
    plates: [...plates(4, kg(2.5)), ...plates(2, kg(1.25), kg(5))],
    dumbbells: [
      { stamped: kg(7), count: 1 },
      { stamped: kg(12), count: 2 },
    ],
  });

  test('two share the plates, one has them all', () => {
    expect(amounts(loadHandle(gear, 2, kilograms(7))?.side)).toEqual([2.5]);
    expect(loadHandle(gear, 2, kilograms(12))).toBeNull();
    expect(amounts(loadHandle(gear, 1, kilograms(12))?.side)).toEqual([5]);
  });

  test('a fixed dumbbell is found for as many hands as there are', () => {
    expect(fixedDumbbell(gear, 1, kilograms(7))?.stamped).toEqual(kg(7));
    expect(fixedDumbbell(gear, 2, kilograms(7))).toBeNull();
    expect(fixedDumbbell(gear, 2, kilograms(12))?.count).toBe(2);
  });
});

describe('any plates', () => {
  const barbell = { loading: 'barbell', hands: 1, bar: null, step: null } as const;

  test('load → plates → load is the same load, with no more plates than trying every way', () => {
    fc.assert(
      fc.property(anyPlates, fc.nat(), fc.nat(), (owned, pick, pickNow) => {
        const gear = someGear({ plates: owned });
        const sides = everySide(owned, 1);
        const totalOf = (side: readonly PlateKind[]) =>
          micrograms(20_000_000_000 + bothSides(side));
        const total = totalOf(sides[pick % sides.length]!);
        expect(isLoadable(loadsFor(gear, barbell), total)).toBe(true);

        const onNow = loadBar(gear, null, totalOf(sides[pickNow % sides.length]!))!;
        const loaded = loadBar(gear, null, total, onNow)!;
        expect(totalOf(loaded.side)).toBe(total);
        const masses = loaded.side.map(({ measured, stamped }) => massOf(measured ?? stamped));
        expect(masses).toEqual([...masses].sort((a, b) => b - a));

        const ways = sides
          .filter((side) => totalOf(side) === total)
          .map((side) =>
            side.toSorted(
              (a, b) => massOf(b.measured ?? b.stamped) - massOf(a.measured ?? a.stamped),
            ),
          );
        const fewest = Math.min(...ways.map((side) => side.length));
        expect(loaded.side.length).toBe(fewest);
        const least = Math.min(
          ...ways
            .filter((side) => side.length === fewest)
            .map((side) => handledBetween(onNow.side, side)),
        );
        expect(handledBetween(onNow.side, loaded.side)).toBe(least);
      }),
      { numRuns: 300 },
    );
  });

  test('doing the change turns one load into the other, and never takes a plate from under another', () => {
    fc.assert(
      fc.property(anyPlates, fc.nat(), fc.nat(), (owned, first, second) => {
        const gear = someGear({ plates: owned });
        const sides = everySide(owned, 1);
        const loaded = (pick: number) =>
          loadBar(gear, null, micrograms(20_000_000_000 + bothSides(sides[pick % sides.length]!)))!;
        const [from, to] = [loaded(first), loaded(second)];
        const sleeve = [...from.side];
        const { off, on } = plateChange(from, to);
        for (const plate of off) expect(sleeve.pop()).toBe(plate);
        sleeve.push(...on);
        expect(sleeve).toEqual(to.side);
      }),
      { numRuns: 100 },
    );
  });
});

test('as many odd plates as may be owned keep nobody waiting', () => {
  const kinds = Array.from({ length: 60 }, (_, at) => kg((at + 1) * 0.137));
  const usual = plates(6, kg(20), kg(15), kg(10), kg(5), kg(2.5), kg(1.25));
  const gear = someGear({ plates: [...usual, ...plates(GEAR_LIMITS.pieces, ...kinds)] });
  const began = performance.now();
  const { below } = nearestBelowAndAbove(gear, null, kilograms(281.237));
  expect(below).not.toBeNull();
  expect(performance.now() - began).toBeLessThan(10_000);
}, 60_000);
