import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  CURVE,
  loadAtRepsToFailure,
  loadForReps,
  oneRepMax,
  repsToFailureAt,
  shareOfMax,
  shownOneRepMax,
} from '../../src/training/strength.ts';

const reps = fc.double({ min: 1, max: CURVE.servesTo, noNaN: true });
const load = fc.double({ min: 1, max: 500, noNaN: true });

test('more reps to failure with a load always mean a higher maximum', () => {
  fc.assert(
    fc.property(load, reps, reps, (mass, a, b) => {
      fc.pre(Math.abs(a - b) > 1e-9);
      const [few, many] = a < b ? [a, b] : [b, a];
      expect(oneRepMax(mass, many)).toBeGreaterThan(oneRepMax(mass, few));
    }),
  );
});

test('a heavier load always allows fewer reps', () => {
  fc.assert(
    fc.property(
      load,
      reps,
      fc.double({ min: 1.0001, max: 1.5, noNaN: true }),
      (max, many, more) => {
        const light = loadAtRepsToFailure(max, many);
        expect(repsToFailureAt(light * more, max)).toBeLessThan(repsToFailureAt(light, max));
      },
    ),
  );
});

test('load → maximum → reps is where it began, on both sides of the join', () => {
  fc.assert(
    fc.property(load, reps, (mass, many) => {
      const max = oneRepMax(mass, many);
      expect(repsToFailureAt(mass, max)).toBeCloseTo(many, 6);
      expect(loadAtRepsToFailure(max, many)).toBeCloseTo(mass, 6);
    }),
  );
});

test('reps in reserve count as reps that could be done', () => {
  expect(loadForReps(100, 5, 2)).toBe(loadAtRepsToFailure(100, 7));
});

test('the curve has no jump where its two halves meet', () => {
  expect(shareOfMax(10 + 1e-9)).toBeCloseTo(shareOfMax(10), 9);
});

test('a load over the maximum is less than one rep', () => {
  expect(repsToFailureAt(105, 100)).toBeLessThan(1);
});

test('an estimate from more than 15 reps to failure is not shown', () => {
  expect(shownOneRepMax(60, 15)).toBeCloseTo(90, 9);
  expect(shownOneRepMax(60, 15.5)).toBeNull();
  expect(shownOneRepMax(60, 0)).toBeNull();
});
