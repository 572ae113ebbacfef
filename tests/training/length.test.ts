import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthIn, lengthOf, lengthText, readLength } from '../../src/training/length.ts';

describe('a length', () => {
  // NIST SP 811, Appendix B.8: 1 in = 2.54 cm exactly.
  test('of an inch is 2.54 cm exactly', () => {
    expect(lengthIn(lengthOf(1, 'in'), 'cm')).toBe(2.54);
    expect(lengthOf(50, 'in')).toBe(lengthOf(127, 'cm'));
  });

  test('is read as it is typed, with a point or a comma, with or without its unit', () => {
    expect(readLength('86,5', 'cm')?.length).toBe(lengthOf(86.5, 'cm'));
    expect(readLength('34"', 'cm')).toEqual({ length: lengthOf(34, 'in'), unit: 'in' });
    expect(readLength('86 cm', 'in')).toEqual({ length: lengthOf(86, 'cm'), unit: 'cm' });
    for (const none of ['', 'wide', '-3', '8 6', '86kg']) expect(readLength(none, 'cm')).toBeNull();
  });

  test('that was read to a millimetre is shown as it was typed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 400, max: 2500 }), (millimetres) => {
        const typed = String(millimetres / 10);
        const read = readLength(typed, 'cm');
        expect(read && lengthText(read.length, 'cm')).toBe(`${typed} cm`);
      }),
    );
  });
});
