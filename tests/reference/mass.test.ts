import { describe, expect, test } from 'vitest';
import { loadsFor } from '../../src/training/loads.ts';
import { inUnit, kilograms, minus, plus, pounds, share } from '../../src/training/mass.ts';
import { loadBar } from '../../src/training/plates.ts';
import { kg, lb, plates, someGear } from '../training/some-gear.ts';

const barbell = { loading: 'barbell', hands: 1, bar: null, step: null } as const;

describe('the pound: 0.45359237 kg exactly (NIST SP 811, footnote to App. B.8)', () => {
  test.each([
    [1, 453_592_370],
    [45, 20_411_656_650],
    [315, 142_881_596_550],
  ])('%i lb', (amount, inMicrograms) => {
    expect(pounds(amount)).toBe(inMicrograms);
  });

  test('45 lb is 20.41165665 kg, 315 lb is 142.88159655 kg', () => {
    expect(inUnit(pounds(45), 'kg')).toBe(20.41165665);
    expect(inUnit(pounds(315), 'kg')).toBe(142.88159655);
  });

  test('three 45 lb plates a side on a 45 lb bar are 315 lb', () => {
    const gear = someGear({
      unit: 'lb',
      bars: [{ name: 'bar', mass: lb(45), collars: lb(0) }],
      plates: plates(6, lb(45)),
    });
    expect(loadsFor(gear, barbell).heaviest).toBe(pounds(315));
  });
});

// IWF Technical and Competition Rules: bars of 20 and 15 kg, collars 2.5 kg each, discs by colour.
describe('a weightlifting bar', () => {
  const discs = [25, 20, 15, 10, 5, 2.5, 2, 1.5, 1, 0.5].map(kg);
  const gear = someGear({
    bars: [
      { name: "men's bar", mass: kg(20), collars: kg(5) },
      { name: "women's bar", mass: kg(15), collars: kg(5) },
    ],
    plates: plates(2, ...discs),
  });

  test("men's bar, collars, 25 and 20 a side are 115 kg", () => {
    const loaded = loadBar(gear, "men's bar", kilograms(115));
    expect(loaded?.side.map(({ stamped }) => stamped.amount)).toEqual([25, 20]);
  });

  test("goes up by 1 kg, from the men's bar with collars at 25 kg, the women's at 20", () => {
    for (const [bar, empty] of [
      ["men's bar", 25],
      ["women's bar", 20],
    ] as const) {
      const loads = loadsFor(gear, { ...barbell, bar });
      expect(loads.lightest).toBe(kilograms(empty));
      for (let load = empty; load <= empty + 100; load += 1) {
        expect(loads.atOrBelow(kilograms(load))).toBe(kilograms(load));
      }
    }
  });
});

// IPF: bar and collars 25 kg; a disc may be off by 0.25 % or 10 g, whichever is more.
describe('a powerlifting bar', () => {
  test('with collars is 25 kg', () => {
    const gear = someGear({ bars: [{ name: 'bar', mass: kg(20), collars: kg(5) }] });
    expect(loadBar(gear, null, kilograms(25))?.side).toEqual([]);
  });

  test('with discs as far off as the rules allow is weighed as it is', () => {
    const off = (stamp: number) => Math.max(stamp * 0.0025, 0.01);
    const gear = someGear({
      bars: [{ name: 'bar', mass: kg(20), collars: kg(5) }],
      plates: [25, 1.25].map((stamp) => ({
        stamped: kg(stamp),
        count: 2,
        measured: kg(stamp + off(stamp)),
      })),
    });
    // 25 + 2 × (25.0625 + 1.26)
    expect(loadsFor(gear, barbell).heaviest).toBe(kilograms(77.645));
  });
});

// ACSM 2009, MSSE 41(3):687–708: add 2 to 10 %.
describe('a step of 2 to 10 %', () => {
  test('from 60 kg goes to 61.2 up to 66.0, from 20 kg to 20.4 up to 22.0', () => {
    expect(share(kilograms(60), 1.02)).toBe(kilograms(61.2));
    expect(share(kilograms(60), 1.1)).toBe(kilograms(66));
    expect(share(kilograms(20), 1.02)).toBe(kilograms(20.4));
    expect(share(kilograms(20), 1.1)).toBe(kilograms(22));
  });

  test('2.5 kg is within it on 60 kg, and 12.5 % of 20 kg is not', () => {
    expect(plus(kilograms(60), kilograms(2.5))).toBeLessThanOrEqual(share(kilograms(60), 1.1));
    expect(minus(kilograms(22.5), kilograms(20)) / kilograms(20)).toBe(0.125);
    expect(kilograms(22.5)).toBeGreaterThan(share(kilograms(20), 1.1));
  });
});
