import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { safeOutput, safeText } from '../../src/text/safe-text.ts';

describe('text that a terminal could act on', () => {
  test.each([
    ['a title', '\u001b]0;gotcha\u0007Squat', 'Squat'],
    ['a title with the other end', '\u001b]2;gotcha\u001b\\Squat', 'Squat'],
    ['the beginning of a title that never ends', 'Squat\u001b]at', 'Squatat'],
    ['a quote wrongly decoded', '\u00e2\u0080\u009dSquat', '\u00e2Squat'],
    ['the clipboard', 'Squat\u001b]52;c;aGVsbG8=\u0007', 'Squat'],
    ['a link', '\u001b]8;;http://example.com\u001b\\Squat\u001b]8;;\u001b\\', 'Squat'],
    ['a colour', '\u001b[31mSquat\u001b[0m', 'Squat'],
    ['a colour by its one-character start', '\u009b31mSquat', 'Squat'],
    ['a reset', '\u001bcSquat', 'Squat'],
    ['a character set', '\u001b(0Squat', 'Squat'],
    ['a bell and a backspace', 'Squ\u0007at\u0008', 'Squat'],
    ['a lone escape', 'Squat\u001b', 'Squat'],
    ['text turned around', 'Squ\u202eat\u202c\u2066\u2069', 'Squat'],
    ['text that is not seen', 'S\u200bq\u200du\ufeffa\u00adt', 'Squat'],
    ['tags that are not seen', 'Squat\u{e0041}\u{e007f}', 'Squat'],
    ['half of a character', 'Squat\ud83d', 'Squat'],
  ])('loses %s', (_, text, clean) => {
    expect(safeText(text)).toBe(clean);
  });

  test('a carriage return cannot write over the line', () => {
    expect(safeText('100 kg\r999')).toBe('100 kg 999');
  });
});

test('line breaks and tabs become spaces; breaks stay where they are wanted', () => {
  expect(safeText('one\ntwo\r\nthree\tfour')).toBe('one two three four');
  expect(safeText('one\ntwo\r\nthree\u2028four', { lines: 'keep' })).toBe('one\ntwo\nthree\nfour');
});

test('what people write stays as it is', () => {
  const text = 'Kniebeuge – tief, 3 × 5 @ 80 kg; ½ Pause, スクワット, приседание, 💪';
  expect(safeText(text)).toBe(text);
});

test('nothing that acts or hides is ever left, and cleaning twice changes nothing', () => {
  const piece = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.constantFrom(
      '\u001b',
      '\u001b[',
      '\u001b]0;',
      '\u0007',
      '\u009c',
      '\u202e',
      '\n',
      'x',
      '[31m',
    ),
  );
  fc.assert(
    fc.property(
      fc.array(piece).map((pieces) => pieces.join('')),
      (text) => {
        const clean = safeText(text);
        expect(clean).not.toMatch(
          /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/,
        );
        expect(safeText(clean)).toBe(clean);
        expect(clean).not.toMatch(/\p{Cs}/u);
      },
    ),
    { numRuns: 500 },
  );
});

test('leaves an output its lines and tabs, and takes what a terminal acts on', () => {
  expect(safeOutput('a\tb\r\nc\n')).toBe('a\tb\r\nc\n');
  expect(safeOutput('\u001b]52;c;aGk=\u0007name \u202edas\u0007')).toBe('name das');
});
