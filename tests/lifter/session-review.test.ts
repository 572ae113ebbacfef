import { expect, test } from 'vitest';
import { Player } from '../ui/player.ts';
import { LAST_DAYS } from '../ui/scene.ts';

/** What a session came to, of the squats of the scene: 80 kg for 8, 8 and 8 with 2, 1 and 1 in reserve before. */
function bestsOf(past: typeof LAST_DAYS, keys: string) {
  const player = new Player(undefined, { past }).atFirstSet().keys(keys);
  player.wait(2).keys('f<down> ');
  return player.scene.coach.review().bests;
}

test('a best estimate is said with the one before', () => {
  // 82.5 kg for 8 with 2 in reserve, where 80 kg for 8 with 2 in reserve were the most.
  expect(bestsOf(LAST_DAYS, '  8<tab>2<enter>')).toEqual([
    'Back squat: best estimate so far, 110 kg for one rep (was 106.7 kg).',
  ]);
});

test('what is no more than before is none', () => {
  expect(bestsOf(LAST_DAYS, 'c80<enter>s  8<tab>2<enter>')).toEqual([]);
  expect(bestsOf(LAST_DAYS, '  5<tab>2<enter>')).toEqual([]);
});

test('the first time there is nothing to better', () => {
  expect(bestsOf([], '  8<tab>2<enter>')).toEqual([]);
});
