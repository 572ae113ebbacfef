import { expect, test } from 'vitest';
import { exerciseSeconds, sessionSeconds } from '../../src/training/set-clock.ts';

// Marshall 2012, J Sci Med Sport 15(2):153–158: 20 reps at 3 s each, three ways.
const fivesOfFour = (rest: number) => ({
  counts: 'reps' as const,
  sets: [4, 4, 4, 4, 4],
  rest: { from: rest, to: rest },
  perSide: false,
  warmUps: 0,
});

test('5 × 4 with 180 s rests takes 780 s', () => {
  expect(exerciseSeconds(fivesOfFour(180))).toBe(780);
});

test('5 × 4 with 20 s rests takes 140 s', () => {
  expect(exerciseSeconds(fivesOfFour(20))).toBe(140);
});

test('20 reps in two sets and a rest of 20 s come near the 103 s of rest-pause', () => {
  // How the lifters split the 20 reps is not printed: two or three pieces with 20 s rests.
  const pieces = (sets: number[]) => exerciseSeconds({ ...fivesOfFour(20), sets });
  expect(pieces([14, 6])).toBeLessThan(103);
  expect(pieces([12, 4, 2, 2])).toBeGreaterThan(103);
});

// Iversen 2021, Sports Med 51(10):2079–2095: about half the time at equal volume.
test('a cluster takes less than half the time of the same reps as straight sets', () => {
  const straight = { ...fivesOfFour(0), sets: [10, 10, 10], rest: { from: 90, to: 150 } };
  const cluster = { ...fivesOfFour(0), sets: [14, 4, 4, 4, 4], rest: { from: 10, to: 15 } };
  expect(exerciseSeconds(cluster)).toBeLessThan(exerciseSeconds(straight) / 2);
});

// Worked by hand, ours: two lifts of 2 sets of 5 reps (15 s), rests of 180 s, a breath of 75 s.
// A 0–15, B 90–105, A at the later of 180 and 195: 195–210, B at the later of 285 and 285: 285–300.
test('two lifts that alternate rest from their own last sets', () => {
  const lift = { ...fivesOfFour(180), sets: [5, 5], pair: 'a' };
  expect(sessionSeconds([lift, lift], 1, 150)).toBe(300);
  const { pair: _, ...alone } = lift;
  expect(sessionSeconds([alone, alone], 1, 150)).toBe(2 * 210 + 150);
});
