import fc from 'fast-check';
import { expect, it } from 'vitest';
import { RULES, reasonWords } from '../../src/lifter/rules.ts';
import { histories, stepsOf } from '../progression/random-history.ts';

it('no two rules of any room share a key: the last would speak for both', () => {
  const keys = RULES.map(({ key }) => key);
  expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
  expect(keys.length).toBeGreaterThan(80);
});

it('counts what is left of the time as people do', () => {
  const left = (minutes: number) => {
    const facts = { name: 'Row', takes: 9, left: minutes };
    return reasonWords({ rule: 'short-left-out', facts }, 'kg').text;
  };
  expect(left(0)).toContain('and none is left');
  expect(left(1)).toContain('and 1 min is left');
  expect(left(2)).toContain('and 2 min are left');
});

it('tells of a reason the loads as loads and all else as numbers', () => {
  const facts = {
    load: 20e9,
    from: 500_000,
    low: 5,
    done: [8, 7, 6],
    expected: 6.25,
    basis: 'hand',
  };
  const { facts: shown } = reasonWords(
    { rule: 'hold-missed', facts: { ...facts, sets: [3] } },
    'kg',
  );
  expect(shown.map(({ value }) => value)).toEqual([
    '20 kg a hand',
    '0 kg a hand',
    '5',
    '8, 7, 6',
    '6.25',
  ]);
});

it('whatever was trained, every reason is told as a sentence with all of its facts', () => {
  fc.assert(
    fc.property(histories, fc.constantFrom('kg' as const, 'lb' as const), (history, unit) => {
      for (const { prescribed } of stepsOf(history)) {
        for (const reason of prescribed.why) {
          const { text, source } = reasonWords(reason, unit);
          expect(text).toMatch(/^[A-Z0-9].*\.$/);
          expect(`${text} ${source}`).not.toMatch(/undefined|NaN|null|does not know/);
        }
      }
    }),
    { numRuns: 60 },
  );
});

it.each([
  [
    'A',
    'A of Lean spring, trained on Fri 27 Nov 2026, is taken for B of this program, by its lifts.',
  ],
  [
    '2026-11-27',
    'What was trained on Fri 27 Nov 2026 is taken for B of this program, by its lifts.',
  ],
])('a day called %s is told so that it says one day once', (done, said) => {
  const facts = { done, program: 'Lean spring', date: '2026-11-27', matched: 'B' };
  const { text } = reasonWords({ rule: 'day-matched', facts }, 'kg');
  expect(text).toContain(said);
});
