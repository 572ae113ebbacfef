import { describe, expect, it } from 'vitest';
import { NARROW, SIGNS, WIDE } from '../../src/ui/digit-shapes.ts';
import { blockDigits, dotsOf } from '../../src/ui/digits.ts';

const FONTS = [
  ['wide and tall', WIDE, true],
  ['wide and low', WIDE, false],
  ['narrow and tall', NARROW, true],
  ['narrow and low', NARROW, false],
] as const;

describe.each(FONTS)('%s digits', (_, shapes, tall) => {
  const dots = (text: string) => dotsOf(text, { shapes, tall, scale: 1 })?.join('') ?? '';

  it('are all of one size', () => {
    const sizes = [...'0123456789'].map((digit) => dots(digit).length);
    expect(new Set(sizes).size).toBe(1);
  });

  it('are as high as their size, and so are the signs between them', () => {
    const all = Object.entries({ ...shapes, ...SIGNS });
    for (const [letter, shape] of all) {
      const rows = shape.reduce((sum, [, low, high]) => sum + (tall ? high : low), 0);
      expect(rows, letter).toBe(tall ? 14 : 10);
    }
  });

  it('differ clearly in every pair: by a tenth of their dots at least', () => {
    for (const a of '0123456789') {
      for (const b of '0123456789'.slice(Number(a) + 1)) {
        const [one, other] = [dots(a), dots(b)];
        const differing = [...one].filter((dot, i) => dot !== other[i]).length;
        expect(differing / one.length, `${a} and ${b}`).toBeGreaterThanOrEqual(0.1);
      }
    }
  });

  it('stand on strokes of two dots', () => {
    for (const digit of '0123456789') {
      const rows = dotsOf(digit, { shapes, tall, scale: 1 }) ?? [];
      // A single dot between gaps would be a thread at three metres.
      for (const row of rows) expect(row, digit).not.toMatch(/(^|\.)#(\.|$)/);
    }
  });
});

describe('the size', () => {
  it.each([
    ['102.5 × 12', 76, 7, 7],
    ['2:14', 116, 14, 14],
    ['2:14', 32, 5, 5],
    ['102.5', 32, 5, 5],
  ])('of %s in %i columns and %i rows is %i rows', (text, columns, rows, wanted) => {
    const drawn = blockDigits(text, columns, rows);
    expect(drawn).toHaveLength(wanted);
    for (const row of drawn ?? []) expect(row.length).toBeLessThanOrEqual(columns);
  });

  it('is none where it would not fit', () => {
    expect(blockDigits('102.5 × 12', 20, 7)).toBeNull();
    expect(blockDigits('12', 80, 4)).toBeNull();
  });
});

it('look so, in every size', async () => {
  const pictures = FONTS.map(([name, shapes, tall]) => {
    const rows = ['01234', '56789', ':.+-×', '1 1'].map((text) =>
      (dotsOf(text, { shapes, tall, scale: 1 }) ?? []).join('\n'),
    );
    return `${name}\n\n${rows.join('\n\n')}`;
  });
  await expect(`${pictures.join('\n\n')}\n`).toMatchFileSnapshot('frames/digits.txt');
});
