import fc from 'fast-check';
import { expect, it } from 'vitest';
import { RULES, reasonWords } from '../../src/lifter/rules.ts';
import { histories, stepsOf } from '../progression/random-history.ts';

it('no two rules of any room share a key: the last would speak for both', () => {
  const keys = RULES.map(({ key }) => key);
  expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
  expect(keys.length).toBeGreaterThan(80);
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
