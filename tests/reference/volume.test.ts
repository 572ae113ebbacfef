import { expect, test } from 'vitest';
import { weeklyVolume } from '../../src/training/volume.ts';

// Pelland 2024: a direct set counts 1, an indirect one 0.5.
test('bench press 4 sets and triceps extension 3 sets: chest 4, triceps 5', () => {
  const volume = weeklyVolume([
    { trains: { chest: 1, triceps: 0.5, 'front-delts': 0.5 }, hardSets: 4 },
    { trains: { triceps: 1 }, hardSets: 3 },
  ]);
  expect(volume.get('chest')).toBe(4);
  expect(volume.get('triceps')).toBe(5);
});
