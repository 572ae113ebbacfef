import { expect, it } from 'vitest';
import { minutesText, secondsText } from '../../src/ui/words.ts';
import { Player } from './player.ts';

const DAY_S = 86_400;

it.each([
  [0, '0 min'],
  [31.4, '31 min'],
  [179, '179 min'],
  [180, '3 h'],
  [2_879, '48 h'],
  [2_880, '2 days'],
  [5_761, '4 days'],
])('%d minutes are told as %s', (minutes, words) => expect(minutesText(minutes)).toBe(words));

it('a clock set far is told in hours or days', () => {
  expect(secondsText(10_799)).toBe('179 min 59 s');
  expect(secondsText(10_800)).toBe('3 h');
  expect(secondsText(7_333 * 60 + 20)).toBe('5 days');
});

it('a session that lay open for days counts no minutes and no seconds', () => {
  const player = new Player()
    .atFirstSet()
    .keys('  ')
    .wait(4 * DAY_S);
  const screen = player.keys('<esc>').screen();
  expect(screen).not.toMatch(/\d{3,} min/);
  expect(player.screen()).toContain('4 days in');
  expect(player.screen()).toContain('the rest ended 4 days ago');
});
