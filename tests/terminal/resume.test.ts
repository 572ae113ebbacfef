import { cpSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { aHome, type DrivenSession, drivenSession, WALL } from './a-session.ts';
import { Home } from './home.ts';
import { shows } from './shows.ts';
import { USUAL_PROGRAM } from './usual-program.ts';

const SECOND = 1000;
const HOUR = 3_600_000;
const DOWN = '\u001b[B';

/** As it was left, for every test to go on from. */
let left: Home | null = null;
afterAll(() => left?.throwAway());

/** Two sets of three were done; the rest after the second has run for half a minute when `q` leaves. */
async function leftInARest(): Promise<{ readonly home: Home }> {
  if (!left) {
    const { home } = await leaveInARest();
    left = new Home();
    cpSync(home.folder, left.folder, { recursive: true });
  }
  const home = aHome();
  cpSync(left.folder, home.folder, { recursive: true });
  return { home };
}

async function leaveInARest(): Promise<DrivenSession> {
  const session = await drivenSession({ program: USUAL_PROGRAM });
  const { terminal, pass } = session;
  await terminal.press(' ', 'set 1 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'set 1 of 3 · saved');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'set 2 of 3 · saved');
  await pass(30);
  await terminal.until(shows('2:30'));
  terminal.send('q');
  expect(await terminal.end()).toMatchObject({ exitCode: 0 });
  return session;
}

/** When the lifter left: half a minute after the last set. */
const leftAt = (home: Home): number =>
  Math.max(...home.events().map(({ at }) => at.wall)) + 30 * SECOND;

test('q leaves the session open, and it goes on just there', async () => {
  const { home } = await leftInARest();
  const saved = home.events();
  const { terminal } = await drivenSession({ home, program: USUAL_PROGRAM, wall: leftAt(home) });
  await terminal.until(shows('2:30'));
  expect(terminal.screen()).toContain('set 3 of 3');
  expect(terminal.screen()).toContain('set 2 of 3 · saved as planned: 6 reps');
  expect(home.events()).toEqual(saved);
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'lead set');
  expect(home.of('session-opened')).toHaveLength(1);
});

test('the rest went on while the program was closed', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: leftAt(home) + 60 * SECOND,
  });
  await terminal.until(shows('1:30'));
});

test('the rest went on while the machine was started anew', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: leftAt(home) + 70 * SECOND,
    env: { HOLDFAST_DRIVEN_BOOT: 'boot-2' },
  });
  await terminal.until(shows('1:20'));
});

test('a set under way is still under way', async () => {
  const session = await drivenSession({ program: USUAL_PROGRAM });
  await session.terminal.press(' ', 'set 1 of 3');
  await session.terminal.press(' ', '▐ LIFT');
  session.terminal.send('q');
  await session.terminal.end();
  const { terminal } = await drivenSession({ ...session, program: USUAL_PROGRAM });
  await terminal.until('▐ LIFT');
  expect(terminal.screen()).toContain('set 1 of 3');
});

test('undo reaches back over the leaving', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({ home, program: USUAL_PROGRAM, wall: WALL + 60_000 });
  await terminal.until('set 3 of 3');
  await terminal.press('u', '▐ LIFT');
  expect(terminal.screen()).toContain('set 2 of 3');
});

test('after twelve hours it asks first, and going on goes on', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: WALL + 13 * HOUR,
  });
  await terminal.until(/begun Wed 25 Nov: 2 of 6 sets done\.[\s\S]*over\s+twelve hours/);
  await terminal.press(' ', 'set 3 of 3');
});

test('after twelve hours it can be closed as it is', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: WALL + 13 * HOUR,
  });
  await terminal.until('A session is still open');
  await terminal.press(DOWN, '▸ Close it as it is');
  await terminal.press(' ', 'Next time');
  expect(home.of('session-closed')).toMatchObject([{ how: 'as-it-is' }]);
  expect(home.of('set-done')).toHaveLength(2);
});

test('after twelve hours it can be discarded, and then it does not count', async () => {
  const { home } = await leftInARest();
  const asked = await drivenSession({ home, program: USUAL_PROGRAM, wall: WALL + 13 * HOUR });
  await asked.terminal.until('A session is still open');
  await asked.terminal.press(DOWN, '▸ Close it as it is');
  await asked.terminal.press(DOWN, '▸ Discard the session');
  await asked.terminal.press(' ', 'no key brings them back');
  await asked.terminal.press(DOWN, '▸ Discard it');
  asked.terminal.send(' ');
  expect(await asked.terminal.end()).toMatchObject({ exitCode: 0 });
  expect(home.of('session-discarded')).toHaveLength(1);
  const { terminal } = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: WALL + 14 * HOUR,
  });
  expect(await terminal.until('space begin')).toContain('first time');
});

test('just under twelve hours it does not ask', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({
    home,
    program: USUAL_PROGRAM,
    wall: WALL + 11.9 * HOUR,
  });
  await terminal.until('the rest ended');
  expect(terminal.screen()).toContain('set 3 of 3');
});

test('it goes on and closes from its own copy when the program file is broken or gone', async () => {
  const { home } = await leftInARest();
  const { terminal } = await drivenSession({
    home,
    program: 'name: [\n',
    wall: WALL + 60 * SECOND,
  });
  await terminal.until('set 3 of 3');
  await terminal.press(' ', '▐ LIFT');
  await terminal.press(' ', 'lead set');
  await terminal.press('x', '▸ Dumbbell side raise');
  await terminal.press('d', 'left out');
  await terminal.press('q', '▐ REST ▌');
  await terminal.press('f', 'Finish early?');
  await terminal.press(DOWN, '▸ Close it');
  await terminal.press(' ', 'Next time');
  expect(home.of('session-closed')).toHaveLength(1);
});
