import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ewma, trend } from '../../src/training/smoothing.ts';

describe('the trend', () => {
  const daily = (...values: number[]) => values.map((value, day) => ({ day, value }));

  test('is the mean of the readings so far for seven days', () => {
    expect(trend(daily(80, 82, 81))).toEqual([80, 81, 81]);
    expect(
      trend([
        { day: 10, value: 80 },
        { day: 16, value: 81 },
      ]),
    ).toEqual([80, 80.5]);
  });

  test('then goes a tenth of the way to each day’s reading', () => {
    const after = trend(daily(80, 80, 80, 80, 80, 80, 80, 70));
    expect(after[6]).toBe(80);
    expect(after[7]).toBeCloseTo(79, 12);
  });

  test('counts the days without a reading', () => {
    const level = trend([
      { day: 0, value: 80 },
      { day: 10, value: 70 },
    ])[1];
    expect(level).toBeCloseTo(80 - (1 - 0.9 ** 10) * 10, 12);
  });

  test('with a reading every day is the plain average of NIST after its first week', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 40, max: 200, noNaN: true }), { minLength: 8, maxLength: 60 }),
        (values) => {
          const all = trend(daily(...values));
          const plain = ewma(values.slice(7), 0.1, all[6]!);
          for (const [at, level] of plain.entries()) expect(all[7 + at]).toBeCloseTo(level, 9);
        },
      ),
      { numRuns: 50 },
    );
  });

  test('is never changed by what comes later, and stays among the readings', () => {
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
        const part = all.slice(0, 1 + (cut % all.length));
        expect(trend(all).slice(0, part.length)).toEqual(trend(part));
        const values = all.map(({ value }) => value);
        for (const level of trend(all)) {
          expect(level).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
          expect(level).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('of nothing is nothing', () => {
    expect(trend([])).toEqual([]);
  });
});
