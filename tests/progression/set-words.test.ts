import { describe, expect, test } from 'vitest';
import { countsWords, setsWords } from '../../src/progression/set-words.ts';
import type { Basis } from '../../src/training/lift.ts';
import { loadWords } from '../../src/training/load-words.ts';
import { kilograms } from '../../src/training/mass.ts';

test.each<[number, Basis, string]>([
  [80, 'total', '80 kg'],
  [12, 'hand', '12 kg a hand'],
  [40, 'stack', '40 kg on the stack'],
  [20, 'load', '20 kg'],
  [10, 'added', 'body weight + 10 kg'],
  [0, 'added', 'body weight'],
  [-20, 'added', 'body weight − 20 kg'],
  [0, 'hand', '0 kg a hand'],
])('%d kg, %s: %s', (kg, basis, words) => {
  expect(loadWords(kilograms(kg), basis, 'kg')).toBe(words);
});

test.each([
  [[8, 7, 6], 'straight', '8, 7, 6'],
  [[8], 'straight', '8'],
  [[14, 5, 4], 'cluster', '14, then 5 4'],
  [[14, 5], 'cluster', '14, then 5'],
  [[14], 'cluster', '14'],
  [[], 'cluster', ''],
] as const)('%j of %s sets are %j', (counts, style, words) => {
  expect(countsWords(counts, style)).toBe(words);
});

describe('sets as planned', () => {
  const planned = (aims: readonly number[], more: Partial<Parameters<typeof setsWords>[0]> = {}) =>
    setsWords({
      sets: aims.map((aim) => ({ aim, range: [1, 20] as const })),
      minis: null,
      counts: 'reps',
      perSide: false,
      ...more,
    });
  const minis = { aim: 4, mostSets: 5 } as never;

  test.each([
    [planned([6, 6, 6]), '3 sets of 6 reps'],
    [planned([9, 7], { perSide: true }), '2 sets of 9, 7 reps a side'],
    [planned([8]), '1 set of 8 reps'],
    [planned([1]), '1 set of 1 rep'],
    [planned([1, 1]), '2 sets of 1 rep'],
    [planned([1, 2]), '2 sets of 1, 2 reps'],
    [planned([30, 30], { counts: 'seconds' }), '2 sets of 30 seconds'],
    [planned([13], { minis }), '13 reps, then mini-sets of 4, 5 sets at most'],
    [planned([1], { minis }), '1 rep, then mini-sets of 4, 5 sets at most'],
  ])('are %s', (found, words) => {
    expect(found).toBe(words);
  });
});
