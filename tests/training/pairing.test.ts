import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import { clashesOf, inTurn, turnsOf } from '../../src/training/pairing.ts';

const lift = (key: string) => {
  const found = CATALOGUE.get(key);
  if (!found) throw new Error(`There is no ${key}.`);
  return { ...found, style: 'straight' as const, bar: null };
};
const clash = (a: string, b: string) => clashesOf(lift(a), lift(b))[0] ?? null;

test.each([
  ['bench-press', 'dumbbell-row', null],
  ['back-squat', 'pull-up', null],
  ['single-leg-hip-thrust', 'pull-up', null],
  ['back-squat', 'bench-press', 'bar'],
  ['push-up', 'pike-push-up', 'muscles'],
  ['dip', 'overhead-press', 'muscles'],
  ['romanian-deadlift', 'pull-up', 'grip'],
] as const)('%s and %s: %s', (a, b, found) => {
  expect(clash(a, b)).toBe(found);
});

test('a press alternates with the row of its day, not with the other press', () => {
  const day = ['dip', 'pike-push-up', 'band-row'].map(lift);
  const turns = inTurn(day, { dumbbells: [] }, (one) => one);
  expect(turns.map(({ pair }) => pair)).toEqual(['a', undefined, 'a']);
});

test('turns keep the order of the day, and who has no partner is alone', () => {
  const day = [{ pair: 'b' }, {}, { pair: 'b' }, { pair: 'c' }];
  expect(turnsOf(day)).toEqual([[day[0], day[2]], [day[1]], [day[3]]]);
});
