import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clusterVerdict, miniAim } from '../../src/training/effort.ts';

describe('a cluster of five sets', () => {
  test('goes on while the mini-sets match the first', () => {
    expect(clusterVerdict(14, [], 5)).toEqual({ over: false, lastNext: false });
    expect(clusterVerdict(14, [4], 5)).toEqual({ over: false, lastNext: false });
    expect(clusterVerdict(14, [4, 4], 5)).toEqual({ over: false, lastNext: false });
  });

  test('says before the fourth mini-set that it is the last', () => {
    expect(clusterVerdict(14, [4, 4, 4], 5)).toEqual({ over: false, lastNext: true });
  });

  test('is over after the fourth', () => {
    expect(clusterVerdict(14, [4, 4, 4, 4], 5)).toEqual({ over: true, reason: 'most-sets' });
  });

  test('is over when a mini-set has fewer reps than the first', () => {
    expect(clusterVerdict(14, [5, 4], 5)).toEqual({ over: true, reason: 'fewer-reps' });
    expect(clusterVerdict(14, [4, 4, 3], 5)).toEqual({ over: true, reason: 'fewer-reps' });
  });

  test('is over when the first mini-set has fewer than three', () => {
    expect(clusterVerdict(14, [2], 5)).toEqual({ over: true, reason: 'fewer-reps' });
    expect(clusterVerdict(14, [3], 5)).toEqual({ over: false, lastNext: false });
  });

  test('goes on when a mini-set has more than the first', () => {
    expect(clusterVerdict(14, [4, 5], 5)).toEqual({ over: false, lastNext: false });
  });

  test('has nothing to repeat after a lead without a rep', () => {
    expect(clusterVerdict(0, [], 5)).toEqual({ over: true, reason: 'fewer-reps' });
  });
});

test('a cluster of two says at once that its mini-set is the last; of one it is over', () => {
  expect(clusterVerdict(12, [], 2)).toEqual({ over: false, lastNext: true });
  expect(clusterVerdict(12, [], 1)).toEqual({ over: true, reason: 'most-sets' });
});

test('whatever is done, a cluster ends by its most sets, and is told of the last one at most once', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 20 }),
      fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 8, maxLength: 8 }),
      fc.integer({ min: 1, max: 8 }),
      (lead, reps, mostSets) => {
        const minis: number[] = [];
        let told = 0;
        let verdict = clusterVerdict(lead, minis, mostSets);
        while (!verdict.over) {
          if (verdict.lastNext) told += 1;
          minis.push(reps[minis.length]!);
          verdict = clusterVerdict(lead, minis, mostSets);
        }
        expect(1 + minis.length).toBeLessThanOrEqual(mostSets);
        expect(told).toBeLessThanOrEqual(1);
        const matched = minis.every((done) => done >= 3 && done >= minis[0]!);
        expect(verdict.reason).toBe(matched ? 'most-sets' : 'fewer-reps');
      },
    ),
  );
});

describe('what a mini-set aims at', () => {
  test('is three to five before the first is done', () => {
    expect(miniAim([], 14 / 3)).toBe(4);
    expect(miniAim([], 1)).toBe(3);
    expect(miniAim([], 9)).toBe(5);
  });

  test('is the reps of the first one after it', () => {
    expect(miniAim([5, 5], 4)).toBe(5);
    expect(miniAim([4], 5)).toBe(4);
  });
});
