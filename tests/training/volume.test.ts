import { expect, test } from 'vitest';
import { plannedClusterHardSets, weeklyVolume } from '../../src/training/volume.ts';

test('half a set is half a set: work adds up over the week', () => {
  const volume = weeklyVolume([
    { trains: { chest: 1, triceps: 0.5 }, hardSets: 3 },
    { trains: { 'side-delts': 1 }, hardSets: 3.5 },
    { trains: { chest: 1, triceps: 0.5 }, hardSets: 2 },
  ]);
  expect(Object.fromEntries(volume)).toEqual({ chest: 5, triceps: 2.5, 'side-delts': 3.5 });
});

test('a muscle that nothing trains is not there', () => {
  expect(weeklyVolume([]).size).toBe(0);
});

test('a planned cluster of five from 12 to 15 is three and a half to five hard sets', () => {
  // 13 to failure has 6 hard reps; four minis of 4 add 16: 22 ÷ 6.
  expect(plannedClusterHardSets([12, 15], 5)).toBe(3.5);
  expect(plannedClusterHardSets([12, 15], 1)).toBe(1);
});
