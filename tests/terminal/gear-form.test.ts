import { afterEach, beforeEach, expect, test } from 'vitest';
import { Home, SIZES } from './home.ts';

let home: Home;
beforeEach(() => {
  home = new Home();
});
afterEach(() => home.throwAway());

test('the form changes the gear, saves it, and leaves the terminal as it was', async () => {
  const terminal = home.open(['gear', '--edit'], SIZES.usual);
  await terminal.until('Your gear');
  // Down to the heaviest plates, a pair more, and saved.
  await terminal.press('\u001b[B', '▸ plate 20 kg');
  await terminal.press('\u001b[C', 'owned [8]');
  terminal.send('\r');
  expect((await terminal.end()).exitCode).toBe(0);
  expect(home.of('gear-set')).toMatchObject([
    {
      gear: { plates: expect.arrayContaining([{ stamped: { amount: 20, unit: 'kg' }, count: 8 }]) },
    },
  ]);
  expect(terminal.modes()).toMatchObject({ buffer: 'normal', cursorHidden: false });
});

test('what is not saved leaves nothing behind', async () => {
  const terminal = home.open(['gear', '--edit'], SIZES.upright);
  await terminal.until('Your gear');
  await terminal.press('d', 'not saved');
  terminal.send('\u0003');
  expect((await terminal.end()).exitCode).toBe(130);
  expect(home.events()).toEqual([]);
});

test('without a terminal the form is refused in a sentence', async () => {
  const { status, stderr } = await home.run(['gear', '--edit']);
  expect([status, stderr]).toEqual([2, expect.stringContaining('The form needs a terminal.')]);
});
