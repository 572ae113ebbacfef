import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isPlain, segmenter } from '../../src/text/graphemes.ts';

/** As Unicode Annex 29 has it. */
const REFERENCE = new Intl.Segmenter('en');

const told = (of: { segment: (text: string) => Iterable<{ segment: string; index: number }> }) => {
  return (text: string) =>
    [...of.segment(text)].map(({ segment, index }) => [segment, index] as const);
};

const PLAIN = Array.from({ length: 0x2600 }, (_, code) => String.fromCharCode(code)).filter(
  isPlain,
);

test('texts of plain letters and styles fall apart as the standard says', () => {
  expect(PLAIN.length).toBeGreaterThan(700);
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...PLAIN, '\u001b')), (letters) => {
      const text = letters.join('');
      expect(told(segmenter)(text)).toEqual(told(REFERENCE)(text));
    }),
    { numRuns: 300 },
  );
});

test.each(['e\u0301', '👩‍👩‍👧‍👦', '\r\n', '한국', 'ด้', '🇩🇪', '▸\ufe0f'])('so does %s', (text) => {
  expect(told(segmenter)(`a${text}b`)).toEqual(told(REFERENCE)(`a${text}b`));
  expect(told(segmenter)(`a${text}b`)).toHaveLength(text === '한국' ? 4 : 3);
});
