import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgedReadings, massTrend } from '../../src/training/mass-trend.ts';
import { plainWeights, trendErrors, waywardWeights } from '../figures/made-weights.ts';

const daily = (...values: number[]) => values.map((value, day) => ({ day, value }));

/** Losing 0.7 % a week from 82 kg, read without error. */
const losing = (days: number) =>
  daily(...Array.from({ length: days }, (_, day) => 82 * 0.993 ** (day / 7)));

describe('the trend', () => {
  test('of one reading is that reading, of nothing nothing', () => {
    expect(massTrend(daily(80.4))).toEqual([80.4]);
    expect(massTrend([])).toEqual([]);
  });

  test('follows a steady loss without lagging behind it', () => {
    const readings = losing(43);
    const trend = massTrend(readings);
    for (const at of [28, 35, 42]) {
      expect(Math.abs(trend[at]! / readings[at]!.value - 1)).toBeLessThan(0.001);
    }
  });

  test('is hardly moved by one reading far off', () => {
    const readings = losing(30);
    const salty = [...readings.slice(0, 29), { day: 29, value: readings[29]!.value + 3 }];
    expect(massTrend(salty).at(-1)! - massTrend(readings).at(-1)!).toBeLessThan(0.35);
    expect(massTrend(salty).at(-1)! - massTrend(readings).at(-1)!).toBeGreaterThan(0);
  });

  test('believes what was due as it is, and the less the farther a reading is off', () => {
    const trustOf = (kg: number) =>
      judgedReadings([...losing(29), { day: 29, value: kg }]).at(-1)!.trust;
    expect(trustOf(80)).toBe(1);
    expect(trustOf(83)).toBeLessThan(0.7);
    expect(trustOf(75)).toBeLessThan(0.15);
    expect(trustOf(30)).toBeLessThan(0.001);
  });

  test('believes the readings after a long gap', () => {
    const back = [...losing(30), ...[90, 91, 92, 93].map((day) => ({ day, value: 84 }))];
    expect(massTrend(back).at(-1)).toBeGreaterThan(83);
  });

  test('is never changed by what comes later, and the same in every unit', () => {
    const readings = fc
      .array(
        fc.record({
          gap: fc.integer({ min: 1, max: 40 }),
          value: fc.double({ min: 40, max: 200, noNaN: true }),
        }),
        { minLength: 1, maxLength: 40 },
      )
      .map((steps) => {
        let day = 0;
        return steps.map(({ gap, value }) => {
          day += gap;
          return { day, value };
        });
      });
    fc.assert(
      fc.property(readings, fc.nat(), (all, cut) => {
        const trend = massTrend(all);
        const part = all.slice(0, 1 + (cut % all.length));
        expect(trend.slice(0, part.length)).toEqual(massTrend(part));
        const inPounds = massTrend(
          all.map(({ day, value }) => ({ day, value: value / 0.45359237 })),
        );
        for (const [at, level] of trend.entries()) {
          expect(level).toBeGreaterThan(0);
          expect(inPounds[at]! * 0.45359237).toBeCloseTo(level, 6);
        }
      }),
      { numRuns: 100 },
    );
  });
});

// An average that goes a tenth of the way each day had a bias of 0.65 % and an error of 0.8 % on both.
test('on made courses of weight it is near what the body weighs without its water', () => {
  const plain = trendErrors(plainWeights, massTrend, 60);
  expect(Math.abs(plain.bias)).toBeLessThan(0.1);
  expect(plain.error).toBeLessThan(0.3);
  const wayward = trendErrors(waywardWeights, massTrend, 60);
  expect(Math.abs(wayward.bias)).toBeLessThan(0.15);
  expect(wayward.error).toBeLessThan(0.65);
});
