import { expect, test } from 'vitest';
import { type Draw, differenceOf, middleOf, rangeOf } from '../../src/rehearsal/draws.ts';

/** Draws that keep so many percent. */
const drawn = (...kept: readonly number[]): readonly Draw[] =>
  kept.map((share) => ({ verdict: { kept: share } }) as unknown as Draw);
const middle = (...kept: readonly number[]) => middleOf(drawn(...kept)).verdict.kept;

test('the draw in the middle by what is kept; of an even number the lower one', () => {
  expect(middle(99)).toBe(99);
  expect(middle(103, 97)).toBe(97);
  expect(middle(103, 97, 99)).toBe(99);
  expect(middle(103, 97, 99, 101)).toBe(99);
  expect(() => middle()).toThrow();
});

test('a range leaves out the tenth at either end', () => {
  expect(rangeOf([3, 1, 2])).toEqual([1, 3]);
  expect(rangeOf([10, 9, 8, 7, 6, 5, 4, 3, 2, 1])).toEqual([2, 9]);
  expect(rangeOf(Array.from({ length: 20 }, (_, at) => at))).toEqual([2, 17]);
});

test('a difference is the mean of those of each lifter, with its standard error', () => {
  // Differences 1, 2 and 3: mean 2, deviation 1, error 1 ÷ √3.
  const { mean, error } = differenceOf(drawn(10, 20, 30), drawn(11, 22, 33));
  expect(mean).toBe(2);
  expect(error).toBeCloseTo(1 / Math.sqrt(3), 12);
  // Differences 1 and 3: mean 2, deviation √2, error 1.
  expect(differenceOf(drawn(10, 20), drawn(11, 23)).error).toBeCloseTo(1, 12);
  expect(differenceOf(drawn(10), drawn(12))).toEqual({ mean: 2, error: 0 });
  expect(differenceOf(drawn(10, 20, 30), drawn(10, 20))).toEqual({ mean: 0, error: 0 });
});
