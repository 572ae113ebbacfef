import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { dayWords } from '../../src/text/day-words.ts';
import { codeOf, diskSentence, diskWords } from '../../src/text/disk-words.ts';
import { clockText, durationRangeText, durationText, rangeText } from '../../src/text/durations.ts';
import { jsonText } from '../../src/text/json-text.ts';
import { nearestKey } from '../../src/text/nearest.ts';
import { problemText, Refusal } from '../../src/text/problem.ts';

describe('time in words', () => {
  test.each([
    [185, '3:05'],
    [60, '1:00'],
    [9.2, '0:10'],
    [0, '0:00'],
    [-4, '0:00'],
    [3723, '1:02:03'],
  ])('%d seconds on a clock are %s', (seconds, text) => {
    expect(clockText(seconds)).toBe(text);
  });

  test.each([
    [-4, '0 s'],
    [0, '0 s'],
    [12, '12 s'],
    [59, '59 s'],
    [60, '1 min'],
    [61, '61 s'],
    [90, '90 s'],
    [119, '119 s'],
    [120, '2 min'],
    [180, '3 min'],
    [150, '2:30 min'],
    [3599, '59:59 min'],
    [3600, '1 h'],
    [3900, '1 h 5 min'],
    [7199, '2 h'],
  ])('%d seconds said aloud are %s', (seconds, text) => {
    expect(durationText(seconds)).toBe(text);
  });

  test.each([
    [[10, 15], '10–15 s'],
    [[180, 300], '3–5 min'],
    [[180, 180], '3 min'],
    [[45, 90], '45–90 s'],
    [[60, 90], '60–90 s'],
    [[90, 180], '90 s–3 min'],
    [[60, 120], '1–2 min'],
    [[0, 60], '0–60 s'],
    [[60, 119], '60–119 s'],
    [[59, 120], '59 s–2 min'],
  ] as const)('a rest of %j is %s', (range, text) => {
    expect(durationRangeText(range)).toBe(text);
  });

  test('a range of one is a number', () => {
    expect(rangeText([5, 8])).toBe('5–8');
    expect(rangeText([6, 6])).toBe('6');
  });

  test('a day has its weekday', () => {
    // 25 November 2026 is a Wednesday (any calendar).
    expect(dayWords('2026-11-25')).toBe('Wed 25 Nov 2026');
    expect(dayWords(Temporal.PlainDate.from('2027-01-03'))).toBe('Sun 3 Jan 2027');
  });
});

describe('the nearest key', () => {
  const lifts = ['back-squat', 'front-squat', 'bench-press', 'overhead-press', 'row'];

  test.each([
    ['bak-squat', 'back-squat'],
    ['Back squat', 'back-squat'],
    ['back_squat', 'back-squat'],
    ['bcak-squat', 'back-squat'],
    ['bench-pres', 'bench-press'],
    ['rwo', 'row'],
    ['overheadpress', 'overhead-press'],
  ])('of %j is %j', (found, meant) => {
    expect(nearestKey(found, lifts)).toBe(meant);
  });

  test.each(['curl', 'xyz', '', 'deadlift-with-a-long-name'])('of %j is none', (found) => {
    expect(nearestKey(found, lifts)).toBeNull();
  });

  test('of one letter only that letter is near', () => {
    expect(nearestKey('Z', ['A', 'B'])).toBeNull();
    expect(nearestKey('b', ['A', 'B'])).toBe('B');
    expect(nearestKey('ax', ['ay'])).toBe('ay');
  });

  test('is the first with the fewest letters changed, added, dropped or swapped, a third of its own at most', () => {
    /** Optimal string alignment by its definition, from the ends of the words. */
    const edits = (a: string, b: string): number => {
      if (a === '' || b === '') return a.length + b.length;
      const [restA, restB] = [a.slice(0, -1), b.slice(0, -1)];
      const swapped =
        a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1);
      return Math.min(
        edits(restA, b) + 1,
        edits(a, restB) + 1,
        edits(restA, restB) + Number(a.at(-1) !== b.at(-1)),
        ...(swapped ? [edits(a.slice(0, -2), b.slice(0, -2)) + 1] : []),
      );
    };
    const mostOf = ({ length }: string): number => (length < 2 ? 0 : length < 6 ? 1 : 2);
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(word, fc.array(word, { maxLength: 4 }), (found, known) => {
        const near = known
          .map((name) => ({ name, far: edits(found, name) }))
          .filter(({ name, far }) => far <= mostOf(name))
          .toSorted((a, b) => a.far - b.far);
        expect(nearestKey(found, known)).toBe(near[0]?.name ?? null);
      }),
      { numRuns: 300 },
    );
    expect(nearestKey('abcdexyz', ['abcdefgh'])).toBeNull();
    expect(nearestKey('abcdefxyz', ['abcdefghi'])).toBe('abcdefghi');
  });

  test('of a text far longer than any is found to be none, without comparing it', () => {
    const start = performance.now();
    expect(nearestKey('a'.repeat(1_000_000), lifts)).toBeNull();
    expect(performance.now() - start).toBeLessThan(500);
  });
});

describe('what other programs and people are told', () => {
  test('JSON holds no character that a terminal acts on, and reads back the same', () => {
    const value = { name: 'a\u009b31m\u202eb\ufeff', fine: 'é 3 × 5' };
    const text = jsonText(value);
    expect(text).not.toMatch(/[\u007f-\u009f\u202e\ufeff]/);
    expect(text).toContain('é 3 × 5');
    expect(JSON.parse(text)).toEqual(value);
    // Two spaces in, for people who read it.
    expect(jsonText({ a: [1] })).toBe('{\n  "a": [\n    1\n  ]\n}');
  });

  test('a problem is its sentences, and a refusal is all its problems', () => {
    const problem = { what: 'There is no bar.', fix: 'Add one.' };
    expect(problemText(problem)).toBe('There is no bar. Add one.');
    expect(new Refusal(problem, { what: 'Nor plates.' }).message).toBe(
      'There is no bar. Add one.\nNor plates.',
    );
  });
});

describe('what the system says of a file', () => {
  const error = (code: unknown) => Object.assign(new Error('EX: not said'), { code });

  test('is said in words, by its code where there are none, and not made up where there is no code', () => {
    expect(diskWords(error('ENOSPC'))).toBe('the disk is full');
    expect(diskWords(error('EXDEV'))).toBe('the system says EXDEV');
    for (const none of [error(28), new Error('no code'), null, 'text']) {
      expect(codeOf(none)).toBeNull();
      expect(diskWords(none)).toBe('it failed for an unknown reason');
    }
  });

  test('is a sentence by itself', () => {
    expect(diskSentence(error('EACCES'))).toBe('This user may not do that there.');
  });
});
