import { expect, test } from 'vitest';
import { bestShown, shownStrength } from '../../src/cut/shown-strength.ts';
import { kilograms } from '../../src/training/mass.ts';
import { LIFTS, type MadeResult, madeResult } from './made.ts';

const shown = (made: Omit<MadeResult, 'on'>, body: number | null = 80) => {
  const result = madeResult({ ...made, on: '2026-09-07' });
  const bodyMassOn = () => (body === null ? null : kilograms(body));
  const kg = (value: number | null) =>
    value === null ? null : Math.round((value / kilograms(1)) * 10) / 10;
  return [
    result.sets.map((set) => kg(shownStrength(result, set, bodyMassOn))),
    kg(bestShown(result, bodyMassOn)),
  ];
};

// Brzycki 1993: load × 36 ÷ (37 − reps to failure).
test('a set tells what could be lifted once, and the best of a session counts', () => {
  expect(shown({ lift: LIFTS.bench, load: 80, counts: [8, 7, 5], reserve: 1 })).toEqual([
    [102.9, 99.3, 92.9],
    102.9,
  ]);
  expect(shown({ lift: LIFTS.bench, load: 80, counts: [5, 7], reserve: 0 })[1]).toBe(96);
});

test('of a cluster only the lead set does', () => {
  const raise = { lift: LIFTS.raise, load: 8, counts: [13, 4, 4], style: 'cluster' } as const;
  expect(shown({ ...raise, reserve: 0, range: [12, 15] })[0]).toEqual([11.5, null, null]);
});

test('a set far from failure, one of very many reps and a hold tell nothing', () => {
  const bench = { lift: LIFTS.bench, load: 80 };
  expect(shown({ ...bench, counts: [5], reserve: 5 })[1]).not.toBeNull();
  expect(shown({ ...bench, counts: [5], reserve: 6 })).toEqual([[null], null]);
  expect(shown({ ...bench, counts: [15], reserve: 0 })[1]).not.toBeNull();
  expect(shown({ ...bench, counts: [16], reserve: 0 })).toEqual([[null], null]);
  expect(shown({ lift: LIFTS.plank, load: 0, counts: [40] })).toEqual([[null], null]);
});

test('a lift of the body needs its weight', () => {
  const up = { lift: LIFTS.pullUp, load: 10, counts: [5], reserve: 0 };
  // 90 kg × 36 ÷ 32.
  expect(shown(up)[1]).toBe(101.3);
  expect(shown(up, null)[1]).toBeNull();
});
