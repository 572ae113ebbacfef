import { expect, test } from 'vitest';
import { answersSchema } from '../../src/settings/answers-schema.ts';
import { gearSchema } from '../../src/settings/gear-schema.ts';
import { defaultGear } from '../../src/training/default-gear.ts';

/** What is kept of a new program's answers, and of what is owned, is read at its bounds and not past them. */
const usual = {
  ...{ at: 'aim', unit: 'kg', kit: 0, gear: defaultGear('kg'), aim: 'cut', days: 3, minutes: 60 },
  ...{ hurts: [], focus: [], bests: [] },
};
const best = { lift: 'back-squat', load: 100e9, reps: 5, reserve: 2 };
const ofBest = (changes: object) => ({ bests: [{ ...best, ...changes }] });

test.each([
  ['days of a week', (days: number) => ({ days }), 2, 4],
  ['minutes of a session', (minutes: number) => ({ minutes }), 15, 180],
  ['reps of a best', (reps: number) => ofBest({ reps }), 1, 99],
  ['reps left at a best', (reserve: number) => ofBest({ reserve }), 0, 10],
  ['the place of a kit', (kit: number) => ({ kit }), 0, Number.POSITIVE_INFINITY],
] as const)('%s', (_, withValue, least, most) => {
  const isRead = (value: number) =>
    answersSchema().safeParse({ ...usual, ...withValue(value) }).success;
  expect([least - 1, least].map(isRead)).toEqual([false, true]);
  if (most < 1000) expect([most, most + 1].map(isRead)).toEqual([true, false]);
  expect(isRead(least + 0.5)).toBe(false);
});

const kg = (amount: number) => ({ amount, unit: 'kg' });

test.each([
  [
    'what a plate weighs',
    (amount: number) => ({ plates: [{ stamped: kg(amount), count: 2 }] }),
    0,
    1000,
  ],
  ['plates of a kind', (count: number) => ({ plates: [{ stamped: kg(5), count }] }), 0, 200],
  [
    'kinds of plates',
    (kinds: number) => ({ plates: Array(kinds).fill({ stamped: kg(5), count: 2 }) }),
    0,
    100,
  ],
  [
    'letters of a bar’s name',
    (letters: number) => ({ bars: [{ name: 'x'.repeat(letters), mass: kg(20), collars: kg(0) }] }),
    1,
    40,
  ],
] as const)('%s', (_, withValue, least, most) => {
  const isRead = (value: number) =>
    gearSchema().safeParse({ ...defaultGear('kg'), ...withValue(value) }).success;
  expect([least, most, most + 1].map(isRead)).toEqual([true, true, false]);
});
