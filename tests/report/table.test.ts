import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { type Column, textTable } from '../../src/report/table.ts';
import { wrapped } from '../../src/text/columns.ts';

const columns: readonly Column[] = [
  { heading: 'date', align: 'left' },
  { heading: 'load', align: 'right' },
  { heading: 'reps', align: 'left' },
  { heading: 'note', align: 'left', dropFirst: 2 },
  { heading: 'move', align: 'left', dropFirst: 1 },
];
const rows = [
  ['2026-11-20', '80', '6 5 5', 'slept badly', 'hold'],
  ['2026-11-24', '102.5', '8', '', 'up'],
];

describe('a table in text', () => {
  it('lines its columns up', () => {
    expect(textTable(columns, rows, 60)).toEqual([
      'date         load  reps   note         move',
      '2026-11-20     80  6 5 5  slept badly  hold',
      '2026-11-24  102.5  8                   up',
    ]);
  });

  it('leaves out what may go, the least needed first', () => {
    expect(textTable(columns, rows, 40)[1]).toBe('2026-11-20     80  6 5 5  hold');
    expect(textTable(columns, rows, 26)[1]).toBe('2026-11-20     80  6 5 5');
  });

  it('turns rows into blocks where the columns that stay are too wide', () => {
    expect(textTable(columns, rows, 16).slice(0, 5)).toEqual([
      'date  2026-11-20',
      'load  80',
      'reps  6 5 5',
      'note  slept bad…',
      'move  hold',
    ]);
  });

  it('measures wide characters by the columns they take', () => {
    const [, first] = textTable(columns.slice(0, 2), [['重い', '1']], 30);
    expect(first).toBe('重い     1');
  });

  it('is never wider than asked, whatever stands in it', () => {
    const cell = fc
      .string({ unit: 'grapheme', maxLength: 20 })
      .map((text) => text.replace(/\s/g, '_'));
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 5, maxLength: 5 }), { maxLength: 6 }),
        fc.integer({ min: 1, max: 80 }),
        (made, width) => {
          for (const line of textTable(columns, made, width)) {
            expect(stringWidth(line)).toBeLessThanOrEqual(width);
          }
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('wrapped text', () => {
  it('breaks at spaces and indents what follows', () => {
    expect(wrapped('keep the load and do one set fewer', 14, '  ')).toEqual([
      'keep the load',
      '  and do one',
      '  set fewer',
    ]);
  });

  it('is never wider than asked', () => {
    fc.assert(
      fc.property(fc.lorem({ maxCount: 20 }), fc.integer({ min: 3, max: 60 }), (text, width) => {
        expect(wrapped(text, width, ' ').every((line) => stringWidth(line) <= width)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
