import { expect, test } from 'vitest';
import { readEvent } from '../../src/journal/read-event.ts';
import { play, prescription, straight } from '../session/a-session.ts';

/** Every number of the journal has bounds: at the bound an event is read, past it it is none. */
const stamp = {
  id: 'file:0',
  at: { wall: Date.UTC(2026, 10, 25), up: null, boot: null },
  zone: 60,
};
const opened = play(prescription(straight())).events()[0] as unknown as {
  readonly prescription: { readonly exercises: readonly object[] };
};
const [exercise] = opened.prescription.exercises;

const done = { type: 'set-done', exercise: 0, role: 'straight', index: 0, load: 1, count: 5 };
const set = { ...done, reserve: null, entered: 'typed' };
const gear = {
  unit: 'kg',
  ...{ bars: [], plates: [], dumbbells: [], handles: [], stacks: [], bands: [] },
  freeStep: { amount: 1, unit: 'kg' },
};
const rest = { from: 0, to: 0 };
const short = { minutes: 30, exercises: [], restBetween: rest, cut: [] };
const session = { ...opened, ...stamp };
const inExercise = (changes: object) => ({
  ...session,
  prescription: { ...opened.prescription, exercises: [{ ...exercise, ...changes }] },
});
const ids = (count: number) => Array.from({ length: count }, () => 'file:1');

/** What is varied, the least and the most that is read, and the step past them. */
const BOUNDS: readonly (readonly [
  string,
  (value: number) => unknown,
  least: number,
  most: number,
  step: number,
])[] = [
  ['a load, in µg', (load) => ({ ...set, load }), -1e12, 1e12, 1],
  ['reps, or seconds of a hold', (count) => ({ ...set, count }), 0, 86_400, 0.5],
  ['reps in reserve', (reserve) => ({ ...set, reserve }), 0, 1000, 0.5],
  ['the number of an exercise', (at) => ({ ...set, exercise: at }), 0, 1000, 1],
  ['the place of a set', (index) => ({ ...set, index }), 0, 1000, 1],
  ['body weight, in µg', (mass) => ({ type: 'weighed', on: '2026-11-25', mass }), 1, 1e12, 1],
  ['a waist, in µm', (length) => ({ type: 'waist-measured', on: '2026-11-25', length }), 1, 1e7, 1],
  ['the change of a rest, in s', (by) => ({ type: 'rest-changed', by }), -86_400, 86_400, 0.5],
  ['minutes there are', (minutes) => ({ type: 'day-shortened', ...short, minutes }), 0, 1440, 0.5],
  [
    'sets of a shortened exercise',
    (sets) => ({ type: 'day-shortened', ...short, exercises: [{ exercise: 0, sets, rest }] }),
    0,
    100,
    1,
  ],
  ['sets of a cluster', (mostSets) => inExercise({ minis: { mostSets, aim: 3 } }), 1, 100, 1],
  ['a share of body weight', (bodyShare) => inExercise({ bodyShare }), -10, 10, 0.1],
  ['hands', (hands) => inExercise({ hands }), 1, 2, 1],
  [
    'days of a week',
    (daysPerWeek) => ({ ...session, prescription: { ...opened.prescription, daysPerWeek } }),
    1,
    14,
    0.5,
  ],
  [
    'an instant',
    (wall) => ({ ...set, at: { ...stamp.at, wall } }),
    Date.UTC(1900, 0),
    Date.UTC(2200, 0),
    1,
  ],
  ['minutes ahead of UTC', (zone) => ({ ...set, zone }), -1439, 1439, 1],
  ['pieces of a kind', (count) => withPlates([{ count }]), 0, 200, 1],
  [
    'a mass that is owned',
    (amount) => withPlates([{ stamped: { amount, unit: 'kg' } }]),
    0,
    1000,
    1,
  ],
];

function withPlates(plates: readonly object[]) {
  const usual = { stamped: { amount: 1, unit: 'kg' }, count: 2 };
  return {
    type: 'gear-set',
    gear: { ...gear, plates: plates.map((one) => ({ ...usual, ...one })) },
  };
}

const isRead = (event: unknown) => readEvent({ ...stamp, ...(event as object) }) !== null;

test.each(BOUNDS)('%s', (_, withValue, least, most, step) => {
  expect(isRead(withValue(least))).toBe(true);
  expect(isRead(withValue(most))).toBe(true);
  expect(isRead(withValue(least - step))).toBe(false);
  expect(isRead(withValue(most + step))).toBe(false);
  expect(isRead(withValue(Number.NaN))).toBe(false);
});

test.each([
  ['letters of a text', (count: number) => ({ ...note, text: 'x'.repeat(count) }), 20_000],
  ['letters of a name', (count: number) => ({ ...kit, name: 'x'.repeat(count) }), 40],
  ['kinds of plates', (count: number) => withPlates(Array(count).fill({})), 100],
  ['sets confirmed at once', (count: number) => ({ type: 'sets-confirmed', of: ids(count) }), 1000],
  ['sessions of an import', (count: number) => ({ type: 'imported', of: ids(count) }), 100_000],
] as const)('%s are so many at most', (_, withCount, most) => {
  expect(isRead(withCount(most))).toBe(true);
  expect(isRead(withCount(most + 1))).toBe(false);
});

const note = { type: 'note-written', exercise: null };
const kit = { type: 'kit-kept', gear: null };

test('an id is that of a file, and a number in it', () => {
  const withId = (id: unknown) => isRead({ ...set, id });
  expect(['file:0', 'f:123'].map(withId)).toEqual([true, true]);
  expect(['file', 'file:', ':1', 'file:one', 'a:1:2', 7, null].map(withId)).toEqual(
    Array(7).fill(false),
  );
});

test('a day is one of the calendar, and a name is not empty', () => {
  const on = (day: unknown) => isRead({ type: 'weighed', mass: 1, on: day });
  expect(['1900-01-01', '2028-02-29', '2199-12-31'].map(on)).toEqual([true, true, true]);
  expect(['1899-12-31', '2027-02-29', '2200-01-01', '2026-1-1', 20261125].map(on)).toEqual(
    Array(5).fill(false),
  );
  expect(isRead({ ...kit, name: '' })).toBe(false);
});

test('a pair of numbers is two', () => {
  expect(isRead(inExercise({ range: [5, 8] }))).toBe(true);
  expect(isRead(inExercise({ range: [5] }))).toBe(false);
  expect(isRead(inExercise({ range: [5, 6, 8] }))).toBe(false);
});
