import { expect, test } from 'vitest';
import { setsShort } from '../../src/cut/work-done.ts';
import { day, LIFTS, type MadeResult, madeResult } from './made.ts';

const days = { from: day('2026-11-02'), to: day('2026-11-15') };
const bench = (more: Partial<MadeResult> = {}) =>
  madeResult({ lift: LIFTS.bench, on: '2026-11-04', load: 80, counts: [6, 6], ...more });
const chest = (...made: readonly ReturnType<typeof madeResult>[]) =>
  setsShort({ results: made }, days, 'chest');

test('sets that were planned and not done are short, done ones far from failure are light', () => {
  expect(chest(bench({ planned: 3 }))).toEqual({ left: 1, light: 0 });
  expect(chest(bench({ reserve: 5 }))).toEqual({ left: 0, light: 2 });
  expect(chest(bench({ planned: 1 }))).toEqual({ left: 0, light: 0 });
});

test('both days of the span count, the days around it do not', () => {
  for (const [on, left] of [
    ['2026-11-01', 0],
    ['2026-11-02', 1],
    ['2026-11-15', 1],
    ['2026-11-16', 0],
  ] as const) {
    expect([on, chest(bench({ on, planned: 3 })).left]).toEqual([on, left]);
  }
});

test('a cluster, and a muscle that is only trained along, are never short', () => {
  expect(chest(bench({ style: 'cluster', planned: 9, reserve: 5 }))).toEqual({ left: 0, light: 0 });
  const made = bench({ planned: 3, reserve: 5 });
  expect(setsShort({ results: [made] }, days, 'triceps')).toEqual({ left: 0, light: 0 });
});

test('nobody tells how far from failure a hold ended', () => {
  const plank = madeResult({
    lift: LIFTS.plank,
    on: '2026-11-04',
    load: 0,
    counts: [40, 40],
    planned: 3,
    reserve: 5,
  });
  expect(setsShort({ results: [plank] }, days, 'abs')).toEqual({ left: 1, light: 0 });
});
