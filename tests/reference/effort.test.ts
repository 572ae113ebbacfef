import { expect, test } from 'vitest';
import { countedReserve, reserveOfRpe } from '../../src/training/effort.ts';

// Zourdos 2016, JSCR 30(1):267–275; Helms 2016. 9.5 is not half a rep.
test.each([
  [10, [0, 0]],
  [9.5, [0, 0]],
  [9, [1, 1]],
  [8.5, [1, 2]],
  [8, [2, 2]],
  [7.5, [2, 3]],
  [7, [3, 3]],
  [6, [4, 6]],
  [5, [4, 6]],
])('a rating of %d is %j reps in reserve', (rating, reserve) => {
  expect(reserveOfRpe(rating)).toEqual(reserve);
});

// Hackett 2017, JSCR 31(8):2162–2168: about one rep off up to 5 from failure, over two at 7 to 10.
test('self-rated reserve is believed to 5 and no further', () => {
  expect([0, 1, 2, 3, 4, 5].map(countedReserve)).toEqual([0, 1, 2, 3, 4, 5]);
  expect([7, 8, 9, 10].map(countedReserve)).toEqual([5, 5, 5, 5]);
});
