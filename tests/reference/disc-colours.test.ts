import { expect, test } from 'vitest';
import { discColour } from '../../src/training/plate-picture.ts';

// IWF Technical and Competition Rules.
test.each([
  [25, 'red'],
  [20, 'blue'],
  [15, 'yellow'],
  [10, 'green'],
  [5, 'white'],
  [2.5, 'red'],
  [2, 'blue'],
  [1.5, 'yellow'],
  [1, 'green'],
  [0.5, 'white'],
])('a disc of %d kg is %s', (amount, colour) => {
  expect(discColour({ amount, unit: 'kg' })).toBe(colour);
});

test('the rules have no other disc, and none in pounds', () => {
  expect(discColour({ amount: 1.25, unit: 'kg' })).toBeNull();
  expect(discColour({ amount: 45, unit: 'lb' })).toBeNull();
});
