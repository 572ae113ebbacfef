import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { columnsOf } from '../../src/text/columns.ts';
import { isPlainLocale, plainText } from '../../src/text/plain.ts';

test('signs become what is like them in ASCII, letters lose their accents', () => {
  expect(plainText('┌─┬┐│█▒│▸ 3 × 5–8 ≥ 80 kg · „Crème brûlée“ …')).toBe(
    '+-++|#=|> 3 x 5-8 > 80 kg . "Creme brulee" .',
  );
  expect(plainText('← ↑ → ↓ ± 2 µg ≈ ≤ □ ■ ◧')).toBe('< ^ > v + 2 ug ~ < o # =');
  expect(plainText('plain ~\u007f text')).toBe('plain ~\u007f text');
});

test('what has no likeness is a question mark of the same width', () => {
  expect(plainText('肩ø')).toBe('??');
  // A letter that is ASCII once it is taken apart, and one that is not.
  expect(plainText('Å')).toBe('A');
});

test('every sign that the frames of the screens hold has one', () => {
  const folder = new URL('../ui/frames/80x24/', import.meta.url);
  const text = readdirSync(folder)
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('');
  const signs = [...new Set(text)].filter((sign) => sign > '\u007f');
  expect(signs.filter((sign) => plainText(sign) === '?')).toEqual([]);
  for (const sign of signs) expect(columnsOf(plainText(sign)), sign).toBe(columnsOf(sign));
});

// POSIX.1-2017, 8.2: the first of the three that is set and not empty counts.
test('a locale has nothing but ASCII where it says so', () => {
  expect(isPlainLocale({})).toBe(false);
  expect(isPlainLocale({ LANG: '' })).toBe(false);
  expect(isPlainLocale({ LANG: 'C' })).toBe(true);
  expect(isPlainLocale({ LANG: 'de_DE.UTF-8' })).toBe(false);
  expect(isPlainLocale({ LANG: 'de_DE.utf8', LC_CTYPE: 'C' })).toBe(true);
  expect(isPlainLocale({ LC_ALL: 'en_GB.UTF-8', LC_CTYPE: 'C', LANG: 'C' })).toBe(false);
  expect(isPlainLocale({ LC_ALL: '', LC_CTYPE: 'POSIX', LANG: 'en_GB.UTF-8' })).toBe(true);
});
