import { describe, expect, it } from 'vitest';
import { LEAN_SPRING } from './lean-spring.ts';
import { keysLeadTo } from './led-to.ts';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';

const SIZES = [
  ['34x16', PHONE],
  ['80x24', LAPTOP],
  ['120x40', WIDE],
] as const;

/** Every screen on the way through a session; each is kept as a picture in `frames/`. */
const SCENES: Readonly<Record<string, (player: Player) => Player>> = {
  preview: (player) => player,
  'preview-why': (player) => player.keys('w'),
  'warm-up': (player) => player.keys(' '),
  ready: (player) => player.atFirstSet(),
  lifting: (player) => player.atFirstSet().keys(' '),
  'typed-while-lifting': (player) => player.atFirstSet().keys(' 5'),
  resting: (player) => player.atFirstSet().keys('  ').wait(61),
  'resting-typed': (player) => player.atFirstSet().keys('  ').wait(61).keys('5<tab>'),
  'past-the-early-end': (player) => player.atFirstSet().keys('  ').wait(200),
  'past-the-late-end': (player) => player.atFirstSet().keys('  ').wait(335),
  'pair-rest': (player) =>
    player
      .atFirstSet()
      .keys('x<down>+<esc>')
      .keys('  ')
      .wait(70)
      .keys('s ')
      .wait(25)
      .keys(' ')
      .wait(5),
  'preview-less-time': (player) => player.keys('kk'),
  'less-time': (player) => player.atFirstSet().keys('  ').wait(61).keys('k'),
  paused: (player) => player.atFirstSet().keys('  ').wait(61).keys('p'),
  'cluster-rest': (player) => player.atCluster().keys(' ').wait(30).keys(' ').wait(3),
  'cluster-last-one': (player) => {
    player.atCluster().keys(' ').wait(30).keys(' ');
    for (let mini = 0; mini < 3; mini++) player.wait(16).keys(' ');
    return player.wait(2);
  },
  'cluster-done': (player) => {
    player.atCluster().keys(' ').wait(30).keys(' ');
    for (let mini = 0; mini < 4; mini++) player.wait(16).keys(' ');
    return player.wait(2);
  },
  bodyweight: (player) => player.keys(' x<down> s'),
  hold: (player) => player.keys('<down><down><down><enter> ').wait(21),
  'all-done': (player) => player.keys('  ').keys('x').keys('d<down>d<down>d<down>d').keys('<esc>'),
  exercises: (player) => player.atFirstSet().keys('x<down>'),
  'another-lift': (player) => player.atFirstSet().keys('xl'),
  pain: (player) => player.atFirstSet().keys('  m'),
  'what-is-owned': (player) => player.keys('o'),
  'what-is-asked': (player) => player.keys('ec'),
  load: (player) => player.atFirstSet().keys('c71'),
  note: (player) => player.atFirstSet().keys('m<up> '),
  settings: (player) => player.atFirstSet().keys('g<down>'),
  finish: (player) => player.atFirstSet().keys('  f'),
  help: (player) => player.atFirstSet().keys('  ?'),
  refused: (player) => player.atFirstSet().keys('  99<enter>'),
  summary: (player) => player.atFirstSet().keys('  ').wait(190).keys(' 5 f<down> '),
};

it.each(Object.entries(SCENES))('%s by finger, by ear and by key', async (scene, play) => {
  const finger = play(new Player(PHONE, { settings: { taps: true } })).screen();
  const player = play(new Player());
  const said = player.spoken().join('\n');
  const keys = keysLeadTo(player).join('\n');
  await expect(`${finger}\n\n${said}\n\n${keys}\n`).toMatchFileSnapshot(`frames/told/${scene}.txt`);
});

describe.each(SIZES)('at %s', (name, size) => {
  it.each(Object.entries(SCENES))('%s', async (scene, play) => {
    const screen = play(new Player(size)).screen();
    await expect(`${screen}\n`).toMatchFileSnapshot(`frames/${name}/${scene}.txt`);
  });

  it('taps', async () => {
    const player = new Player(size, { settings: { taps: true } }).atFirstSet().keys('  ').wait(61);
    await expect(`${player.screen()}\n`).toMatchFileSnapshot(`frames/${name}/taps.txt`);
  });

  it('cautions', async () => {
    const player = new Player(size, { start: { kind: 'cautions', scroll: 0 } });
    await expect(`${player.screen()}\n`).toMatchFileSnapshot(`frames/${name}/cautions.txt`);
  });

  it('health', async () => {
    const player = new Player(size, { start: { kind: 'health', scroll: 0 } });
    await expect(`${player.screen()}\n`).toMatchFileSnapshot(`frames/${name}/health.txt`);
  });

  it('first-load', async () => {
    const program = LEAN_SPRING.replace('        start: 80\n', '');
    const player = new Player(size, { program, past: [] }).keys('  ');
    await expect(`${player.screen()}\n`).toMatchFileSnapshot(`frames/${name}/first-load.txt`);
  });
});

it('a window that is too small says what is needed, and its keys work', async () => {
  const player = new Player({ columns: 30, rows: 10 });
  await expect(`${player.screen()}\n`).toMatchFileSnapshot('frames/30x10.txt');
  expect(player.keys(' s  ').sets(0)).toBe('7@-');
  expect(player.keys('q').left).toEqual([0]);
});
