import { expect, test } from 'vitest';
import { type DrivenSession, drivenSession, WALL } from './a-session.ts';
import type { Home } from './home.ts';
import { USUAL_PROGRAM } from './usual-program.ts';

/** Another machine with the same data folder: settings, state and name of its own. */
const tablet = (home: Home, later: number): Promise<DrivenSession> =>
  drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: WALL + later,
    env: {
      XDG_CONFIG_HOME: `${home.folder}/tablet/config`,
      XDG_STATE_HOME: `${home.folder}/tablet/state`,
      HOLDFAST_DRIVEN_NAME: 'tablet',
      HOLDFAST_DRIVEN_BOOT: 'boot-of-the-tablet',
    },
  });

async function leftOnTheLaptop(): Promise<Home> {
  const { home, terminal } = await drivenSession({
    program: USUAL_PROGRAM,
    env: { HOLDFAST_DRIVEN_NAME: 'laptop' },
  });
  await terminal.press(' ', 'set 1 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'set 1 of 3 · saved');
  terminal.send('q');
  await terminal.end();
  return home;
}

test('a session open on another device is shown with its name, and goes on when taken over', async () => {
  const home = await leftOnTheLaptop();
  const saved = home.events();
  const { terminal } = await tablet(home, 60_000);
  // Nothing is written before the lifter says so.
  const asked = await terminal.until('laptop');
  expect(asked).toMatch(/open on laptop since 17:00/i);
  expect(home.events()).toEqual(saved);
  await terminal.press(' ', 'set 2 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'set 2 of 3 · saved');
  expect(home.of('session-taken-over')).toHaveLength(1);
  expect(home.events().slice(0, saved.length)).toEqual(saved);
  terminal.send('q');
  await terminal.end();

  // Back on the laptop both sets are there, and it asks in turn.
  const back = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: WALL + 120_000,
    env: { HOLDFAST_DRIVEN_NAME: 'laptop' },
  });
  expect(await back.terminal.until('tablet')).toMatch(/open on tablet/i);
  await back.terminal.press(' ', 'set 3 of 3');
});

test('what goes on on another device saves nothing here any more, and says so at the next key', async () => {
  const { home, terminal: laptop } = await drivenSession({
    program: USUAL_PROGRAM,
    env: { HOLDFAST_DRIVEN_NAME: 'laptop' },
  });
  await laptop.press(' ', 'set 1 of 3');
  await laptop.press(' ', '▐ LIFT');
  await laptop.press(' ', 'set 1 of 3 · saved');

  const { terminal } = await tablet(home, 60_000);
  await terminal.until('laptop');
  await terminal.press(' ', 'set 2 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'set 2 of 3 · saved');

  const saved = home.events();
  await laptop.press(' ', 'tablet goes on with this session.');
  expect(home.events()).toEqual(saved);
  laptop.send('q');
  await laptop.end();
  terminal.send('q');
  await terminal.end();
});
