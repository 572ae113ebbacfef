import { describe, expect, test } from 'vitest';
import {
  clusterHardReps,
  clusterHardSets,
  countedReserve,
  hardReps,
  isHardSet,
  reserveOf,
  reserveOfRpe,
  tellsStrength,
} from '../../src/training/effort.ts';

describe('hard reps', () => {
  // The worked values of the rule: reps past 60 % of the reps to failure. Ours.
  test.each([
    [12, 0, 5],
    [15, 0, 6],
    [14, 1, 5],
    [5, 1, 2],
    [5, 10, 0],
    [1, 0, 1],
    [0, 3, 0],
  ])('%i reps with %i in reserve have %i', (reps, reserve, effective) => {
    expect(hardReps(reps, reserve)).toBe(effective);
  });

  test('60 % of 35 is 21, whatever binary fractions say', () => {
    expect(hardReps(35, 0)).toBe(14);
    expect(hardReps(25, 0)).toBe(10);
  });

  test('in a cluster every rep of a mini-set counts', () => {
    expect(clusterHardReps({ reps: 14, reserve: 1 }, [4, 4, 4, 4])).toBe(21);
  });
});

describe('hard sets', () => {
  test('end with at most four in reserve, or with another limit', () => {
    expect([isHardSet(0), isHardSet(4), isHardSet(5)]).toEqual([true, true, false]);
    expect(isHardSet(4, 3)).toBe(false);
  });

  test('a cluster counts for its hard reps over those of its lead to failure, to the half', () => {
    // 21 ÷ 6 = 3.5
    expect(clusterHardSets({ reps: 14, reserve: 1 }, [4, 4, 4, 4])).toBe(3.5);
    expect(clusterHardSets({ reps: 12, reserve: 0 }, [])).toBe(1);
    // (5 + 4 + 3) ÷ 5 = 2.4
    expect(clusterHardSets({ reps: 12, reserve: 0 }, [4, 3])).toBe(2.5);
    // To failure it were 15: (3 + 4 + 4) ÷ 6 = 1.8
    expect(clusterHardSets({ reps: 12, reserve: 3 }, [4, 4])).toBe(2);
    expect(clusterHardSets({ reps: 0, reserve: 0 }, [])).toBe(0);
  });
});

test('a lead to failure without mini-sets is one hard set, however many reps it has', () => {
  for (let reps = 1; reps <= 30; reps += 1) {
    expect(clusterHardSets({ reps, reserve: 0 }, [])).toBe(1);
  }
});

describe('reps in reserve', () => {
  test('not entered are the low end of what was wanted, and said to be assumed', () => {
    expect(reserveOf(null, [1, 2])).toEqual({ reserve: 1, assumed: true });
  });

  test('entered as a range count as its low end', () => {
    expect(reserveOf([1, 2], [0, 1])).toEqual({ reserve: 1, assumed: false });
    expect(reserveOf(3, [0, 1])).toEqual({ reserve: 3, assumed: false });
  });

  test('above five count as five for a load and not at all for strength', () => {
    expect([countedReserve(3), countedReserve(8)]).toEqual([3, 5]);
    expect([tellsStrength(5), tellsStrength(6)]).toEqual([true, false]);
  });

  test('a rating that the scale does not have has none', () => {
    expect(reserveOfRpe(4)).toBeNull();
    expect(reserveOfRpe(9.25)).toBeNull();
  });
});
