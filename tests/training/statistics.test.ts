import fc from 'fast-check';
import { linearRegression, rSquared } from 'simple-statistics';
import { expect, test } from 'vitest';
import { leastSquares } from '../../src/training/least-squares.ts';

const value = fc.integer({ min: -1000, max: 1000 }).map((thousandths) => thousandths / 8);

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
  ).toMatchObject({ slope: 0, intercept: 80.5, slopeError: 0, interceptError: 0 });
  expect(leastSquares([])).toMatchObject({ slope: 0, intercept: 0 });
});

test('the errors of slope and intercept are those of a line worked out by hand', () => {
  // Residuals -1/6, 1/3, -1/6: a sum of squares of 1/6 on one degree of freedom; x about its mean: 2.
  const line = leastSquares([
    [0, 0],
    [1, 1],
    [2, 1],
  ]);
  expect(line.slopeError).toBeCloseTo(Math.sqrt(1 / 12), 12);
  expect(line.interceptError).toBeCloseTo(Math.sqrt((1 / 6) * (1 / 3 + 1 / 2)), 12);
});

test('a point of half the weight counts as one that was seen half as often', () => {
  const doubled = leastSquares([
    [0, 0],
    [1, 4],
    [1, 4],
    [2, 1],
    [2, 1],
  ]);
  const weighted = leastSquares([
    [0, 0, 0.5],
    [1, 4],
    [2, 1],
  ]);
  expect(weighted.slope).toBeCloseTo(doubled.slope, 12);
  expect(weighted.intercept).toBeCloseTo(doubled.intercept, 12);
  expect(weighted.r2).toBeCloseTo(doubled.r2, 12);
  // The squares are half as many, and so is the spread; but one degree of freedom is left, not three.
  expect(weighted.slopeError).toBeCloseTo(doubled.slopeError * Math.sqrt(3), 12);
});

test('masses in micrograms keep their digits', () => {
  const line = leastSquares(Array.from({ length: 21 }, (_, day) => [day, 80e9 - day * 70e6]));
  expect(line.slope).toBeCloseTo(-70e6, 3);
  expect(line.slopeError).toBeLessThan(1);
});
