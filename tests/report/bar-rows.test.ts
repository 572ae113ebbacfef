import { expect, test } from 'vitest';
import { barRows } from '../../src/report/bar-rows.ts';

/** A bar of forty columns to ten, a quarter each; the band begins at six. */
const drawn = (value: number) => {
  const [row = ''] = barRows([{ label: 'lats', value, text: '1' }], [6, 10], 80, 'ascii');
  return row.slice('lats '.length, -' 1'.length);
};

test('a bar is as many columns long as its value is, to the half', () => {
  const [full, half] = [drawn(9)[0]!, drawn(0.125)[0]!];
  expect(full).not.toBe(half);
  for (const halves of Array.from({ length: 72 }, (_, at) => at)) {
    const bar = drawn(halves / 8);
    expect(bar).toHaveLength(40);
    const filled = full.repeat(Math.floor(halves / 2)) + half.repeat(halves % 2);
    expect(bar.startsWith(filled)).toBe(true);
    expect(bar.slice(filled.length)).not.toMatch(new RegExp(`[\\${full}\\${half}]`));
  }
});

test('the band is drawn where the bar does not reach, from its low end to its edge', () => {
  // Columns of a quarter: the middle of the 25th, at 6.125, is the first inside.
  const bar = drawn(0);
  const band = bar[30]!;
  expect([bar.indexOf(band), bar.lastIndexOf(band)]).toEqual([24, 38]);
  expect(bar.slice(0, 24).trim()).toBe('');
});
