import fc from 'fast-check';
import stringWidth from 'string-width';
import { expect, it } from 'vitest';
import { columnsOf } from '../../src/ui/columns-of.ts';
import { wrapped } from '../../src/ui/line.ts';

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

it('breaks any text into lines that fit, and loses no word', () => {
  fc.assert(
    fc.property(
      fc.array(fc.stringMatching(/^[a-zé×·]{1,20}$/), { maxLength: 12 }),
      fc.integer({ min: 5, max: 40 }),
      (words, columns) => {
        const lines = wrapped(words.join(' '), columns);
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(columns);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
      },
    ),
    { numRuns: 300 },
  );
});
