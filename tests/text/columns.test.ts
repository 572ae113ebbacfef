import fc from 'fast-check';
import stringWidth from 'string-width';
import { expect, it } from 'vitest';
import { columnsOf, cutTo, wrapped } from '../../src/text/columns.ts';

it('measures every text as string-width does', () => {
  const text = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    // Styles as the screens write them, and codes that are none.
    fc.string({ unit: fc.constantFrom('a', '█', '深', '\u001b[1m', '\u001b[36m', '\u001b[2K') }),
    fc.string({ unit: fc.constantFrom(...'aé ×–·▀█■◧→‹›深蹲😀\u00ad\u0301\u200b') }),
  );
  fc.assert(
    fc.property(text, (one) => {
      expect(columnsOf(one)).toBe(stringWidth(one));
    }),
    { numRuns: 1_000 },
  );
});

it('breaks any text into lines that fit, and loses no letter', () => {
  const word = fc.oneof(
    fc.stringMatching(/^[a-zé×·]{1,20}$/),
    fc.constantFrom('深蹲', '😀', 'wide字字字字字字字字'),
  );
  fc.assert(
    fc.property(
      fc.array(word, { maxLength: 12 }),
      fc.integer({ min: 5, max: 40 }),
      fc.constantFrom('', '  '),
      (words, columns, indent) => {
        const lines = wrapped(words.join(' '), columns, indent);
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(columns);
        for (const line of lines.slice(1)) expect(line.startsWith(indent)).toBe(true);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
      },
    ),
    { numRuns: 300 },
  );
});

it('breaks at spaces where there are any, and inside a word that is wider than a line', () => {
  expect(wrapped('lift the bar off the floor', 12)).toEqual(['lift the bar', 'off the', 'floor']);
  expect(wrapped('one two three', 9, '  ')).toEqual(['one two', '  three']);
  expect(wrapped('deadlifting', 4)).toEqual(['dead', 'lift', 'ing']);
  for (const columns of [1, 0, -3]) expect(wrapped('lift', columns)).toEqual([...'lift']);
  expect(wrapped('  ', 10)).toEqual([]);
});

it('cuts a text to its columns and says so', () => {
  expect(cutTo('Overhead press', 8)).toBe('Overhea…');
  expect(cutTo('Overhead press', 14)).toBe('Overhead press');
  expect(cutTo('深蹲深蹲', 4)).toBe('深…');
  expect(cutTo('Overhead press', 1)).toBe('…');
  expect(cutTo('Overhead press', 0)).toBe('');
});
