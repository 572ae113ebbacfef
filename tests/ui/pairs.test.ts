import { describe, expect, it } from 'vitest';
import type { Size } from '../../src/ui/model.ts';
import { LEAN_SPRING } from './lean-spring.ts';
import { LAPTOP, PHONE, Player } from './player.ts';

/** The squat and the pull-up of day A alternate. */
const PAIRED = LEAN_SPRING.replace('start: 80', 'start: 80\n        pair: a').replace(
  'start: 5\n',
  'start: 5\n        pair: a\n',
);

/** The warm-ups of both lifts come before the first set of either. */
function atFirstSets(size: Size): Player {
  const player = new Player(size, { program: PAIRED, past: [] }).keys(' ');
  for (;;) {
    const { stage } = player.scene.session();
    const next = stage.kind === 'ready' || stage.kind === 'resting' ? stage.next : null;
    if (next?.role !== 'warm-up') return player;
    player.keys('s');
  }
}

const SIZES = { '34x16': PHONE, '80x24': LAPTOP } as const;

/** The screen as words, however its lines break. */
const words = (player: Player): string => player.screen().replace(/[\s»]+/g, ' ');

describe.each(Object.entries(SIZES))('a pair at %s', (_, size) => {
  const played = () => atFirstSets(size);

  it('leads from one lift to the other, the one that waits in a line with its own rest', () => {
    const player = played();
    expect(player.screen()).toContain('Back squat');
    player.keys(' ').wait(20).keys(' ').wait(10);
    const first = player.screen();
    expect(first).toMatch(/REST.*\n?.*Pull-up/);
    // The squat was put down 10 s ago and rests for 3 min at least.
    expect(first).toMatch(/Back squat · set 2 of 3 · 2:(50|49)/);
    player.wait(60).keys(' ').wait(30).keys(' ').wait(5);
    const second = player.screen();
    expect(second).toMatch(/REST.*\n?.*Back squat/);
    expect(second).toMatch(/Pull-up · set 2 of 2 · 2:5\d/);
    // A screen reader names the lift that waits, too.
    expect(player.spoken().join(' ')).toMatch(/in turn Pull-up, set 2 of 2, 2:5\d/);
    expect(player.sets(0)).toMatch(/^\d+@-$/);
    expect(player.sets(1)).toMatch(/^\d+@-$/);
  });

  it('is taken apart and made anew in the list of exercises, each told, and taken back by u', () => {
    const player = played().keys('x-');
    expect(words(player)).toContain('alternates with no other');
    expect(player.scene.session().pairs).toEqual([]);
    player.keys('<esc>u');
    expect(words(player)).toContain('Taken back: the end of the pair');
    expect(player.scene.session().pairs).toEqual([[0, 1]]);
    player.keys('x-<esc>x<down>+');
    expect(words(player)).toContain('alternate now');
    expect(player.scene.session().pairs).toEqual([[0, 1]]);
  });
});

it('u in the list of exercises takes the last act back there, and says which', () => {
  const player = atFirstSets(LAPTOP).keys('x<down>d');
  expect(player.scene.session().exercises[1]?.leftOut).toBe(true);
  player.keys('u');
  expect(words(player)).toContain('Taken back: leaving it out.');
  expect(player.screen()).toContain('Space goes on with the chosen one.');
  expect(player.scene.session().exercises[1]?.leftOut).toBe(false);
});

it('a straight set of a pair costs two keys', () => {
  const player = atFirstSets(LAPTOP);
  const before = player.pressed;
  for (let set = 0; set < 4; set++) player.keys(' ').wait(20).keys(' ').wait(300);
  expect(player.pressed - before).toBe(8);
  expect([player.sets(0), player.sets(1)].map((sets) => sets.split(' ').length)).toEqual([2, 2]);
});

it('is told before the session: whose sets alternate', () => {
  const player = new Player(LAPTOP, { program: PAIRED, past: [] });
  expect(player.screen()).toContain('in turn with Pull-up');
  expect(player.spoken().join('\n')).toContain('in turn with Pull-up');
});
