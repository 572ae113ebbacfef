import { expect, test } from 'vitest';
import { sessionValue, toldAgainstFailed } from '../../src/strength/session-seen.ts';

const told = { value: 4.7, variance: 0.01, perToldRep: 0.03, place: 0 };
const failed = { value: 4.65, variance: 0.002, perToldRep: 0, place: 1 };

test('what was told says so much more than a failed rep, and is as unsure as both together', () => {
  const found = toldAgainstFailed([told, failed], 0);
  const [a, b] = [sessionValue([told], 0), sessionValue([failed], 0)];
  expect(found?.value).toBeCloseTo(0.05, 9);
  expect(found?.variance).toBeCloseTo(a.variance + b.variance, 12);
  expect(found?.variance).toBeGreaterThan(told.variance + failed.variance);
  expect(found?.perToldRep).toBeCloseTo(0.03, 9);
  // A later set is weaker by the fall.
  expect(toldAgainstFailed([told, failed], 0.02)?.value).toBeCloseTo(0.03, 9);
});

test('without a set of either kind there is nothing to compare', () => {
  expect(toldAgainstFailed([told], 0)).toBeNull();
  expect(toldAgainstFailed([failed], 0)).toBeNull();
  expect(toldAgainstFailed([], 0)).toBeNull();
});
