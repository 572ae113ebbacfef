import { expect, it } from 'vitest';
import { LAPTOP, PHONE, Player } from './player.ts';
import type { PastDay } from './scene.ts';

/** Pull-ups and squats twice a week for three weeks; who squats without safeties is offered no failed squat. */
const PAST: readonly PastDay[] = [
  ...[24, 20, 17, 13, 10, 6, 4].map((ago) => ({
    ago,
    day: 'A',
    sets: ['80x7@2 80x7@1 80x6@1', '5x7@1 5x6@1', '8x13@0 8x4 8x4 8x3', '0x40'],
  })),
  { ago: 2, day: 'B', sets: ['60x7@2 60x7@1 60x6@1', '50x8@2 50x8@2 50x8@1'] },
];

it.each([PHONE, LAPTOP])(
  'a set to a rep that fails is offered, said at the last set, and left to the lifter',
  (size) => {
    const player = new Player(size, { past: PAST });
    expect(
      player.scene.coach.today().prescription.exercises.filter(({ testSet }) => testSet),
    ).toHaveLength(1);
    player.keys(' x<down> s');
    expect(player.screen()).toContain('Pull-up');
    expect(player.screen()).not.toContain('until a rep fails');
    player.wait(30).keys(' ').wait(20).keys(' ').wait(240);
    expect(player.spoken().join(' ').replace(/\s+/g, ' ')).toContain(
      'on until a rep fails, if you like; then z says so.',
    );
    player.keys(' ').wait(20);
    expect(player.screen().replace(/\s+/g, ' ')).toContain('until a rep fails');
    player.keys(' ').wait(3).keys('z');
    expect(player.scene.session().exercises[1]?.done.at(-1)).toMatchObject({
      failed: true,
      reserve: 0,
    });
  },
);
