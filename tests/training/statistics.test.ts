import fc from 'fast-check';
import { linearRegression, median as referenceMedian, rSquared } from 'simple-statistics';
import { expect, test } from 'vitest';
import { leastSquares } from '../../src/training/least-squares.ts';
import { median } from '../../src/training/median.ts';

const value = fc.integer({ min: -1000, max: 1000 }).map((thousandths) => thousandths / 8);

test('the median is that of another library', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 20 }), (values) => {
      expect(median(values)).toBe(referenceMedian(values));
    }),
  );
  expect(median([])).toBeNull();
});

test('the line is that of another library', () => {
  const points = fc
    .uniqueArray(fc.tuple(value, value), { minLength: 3, maxLength: 30, selector: ([x]) => x })
    .filter((all) => new Set(all.map(([, y]) => y)).size > 1);
  fc.assert(
    fc.property(points, (all) => {
      const { m, b } = linearRegression(all);
      const line = leastSquares(all);
      expect(line.slope).toBeCloseTo(m, 6);
      expect(line.intercept).toBeCloseTo(b, 6);
      expect(line.r2).toBeCloseTo(
        rSquared(all, (x: number) => m * x + b),
        6,
      );
    }),
  );
});

test('a line through two points has no error; points on one day have no slope', () => {
  expect(
    leastSquares([
      [0, 80],
      [7, 79.3],
    ]),
  ).toMatchObject({ slopeError: 0, intercept: 80 });
  expect(
    leastSquares([
      [3, 80],
      [3, 81],
    ]),
  ).toMatchObject({ slope: 0, intercept: 80.5, slopeError: 0 });
  expect(leastSquares([])).toMatchObject({ slope: 0, intercept: 0 });
});

test('masses in micrograms keep their digits', () => {
  const line = leastSquares(Array.from({ length: 21 }, (_, day) => [day, 80e9 - day * 70e6]));
  expect(line.slope).toBeCloseTo(-70e6, 3);
  expect(line.slopeError).toBeLessThan(1);
});
