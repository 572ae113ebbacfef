import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Player } from './player.ts';
import { scene } from './scene.ts';

it('a choice on the screen leaves a setting alone that this version does not understand', () => {
  const over = scene({ settings: { theme: 'sepia' as 'plain', cautions: 'unread' } });
  const { coach, lifter } = over;
  expect(coach.keep({ ...coach.choices(), bell: false })).toBeNull();
  const kept = JSON.parse(readFileSync(join(lifter.folders.config, 'settings.json'), 'utf8'));
  expect(kept).toMatchObject({ theme: 'sepia', bell: false });
  expect(new Player(undefined, { over }).screen()).not.toBe('');
});
