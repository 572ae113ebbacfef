import { expect, test } from 'vitest';
import { drivenSession } from './a-session.ts';
import { USUAL_PROGRAM } from './usual-program.ts';

const SPEAKING = { INK_SCREEN_READER: 'true' };
const BLOCKS = /[█▀▄━╂▐▌│─■□◧]/;
/** A clock that runs: a screen reader would read out every second. */
const RUNNING_CLOCK = /\d:\d\d/;

/** The screen as one line: a terminal breaks sentences where it likes. */
const said = (wanted: string) => (screen: string) =>
  screen.replace(/\n/g, '').includes(wanted) || screen.replace(/\n/g, ' ').includes(wanted);

const speaking = () =>
  drivenSession({ program: USUAL_PROGRAM, env: SPEAKING, size: { columns: 120, rows: 40 } });

test('a whole session is told in sentences', async () => {
  const { terminal, pass, home } = await speaking();
  await terminal.until(said('Chosen: Back squat'));
  await terminal.press(' ', said('Back squat, set 1 of 3'));
  await terminal.press(' ', said('LIFT. Back squat, set 1 of 3.'));
  await terminal.press(' ', said('saved as planned: 6 reps.'));
  expect(terminal.screen()).toContain('Rest for 3 min');
  expect(terminal.screen()).not.toMatch(BLOCKS);
  await pass(90);
  await terminal.until(said('Half of the rest is over.'));
  await pass(80);
  await terminal.until(said('Ten seconds.'));
  await pass(10);
  await terminal.until(said('Ready: lift when you are.'));
  await pass(120);
  await terminal.until(said('GO. Back squat, set 2 of 3.'));
  await terminal.press('7', said('7 reps'));
  await terminal.press('\r', said('saved: 7 reps'));
  await terminal.press('f', said('Finish early?'));
  await terminal.press('\u001b[B', said('Chosen: Close it'));
  await terminal.press(' ', said('Next time'));
  expect(home.of('session-closed')).toHaveLength(1);
  expect(terminal.raw).not.toMatch(BLOCKS);
  terminal.send('q');
  expect((await terminal.end()).exitCode).toBe(0);
  expect(terminal.modes()).toMatchObject({ buffer: 'normal', cursorHidden: false });
});

test('a cluster is told as well: its minis, the last one, and why it is over', async () => {
  const { terminal, pass } = await speaking();
  await terminal.press(' ', said('set 1 of 3'));
  await terminal.press('x', said('Exercises'));
  await terminal.press('\u001b[B', said('Chosen: Dumbbell side raise'));
  await terminal.press(' ', said('lead set'));
  await terminal.press(' ', said('LIFT.'));
  for (const next of ['mini-set 1 of 4', 'mini-set 2 of 4', 'mini-set 3 of 4', 'Last one.']) {
    await terminal.press(' ', said(next));
    await pass(10);
    await terminal.until(said('LIFT.'));
  }
  await terminal.press(' ', said('Cluster done: all its sets.'));
  expect(terminal.screen()).toContain('Next: Back squat');
});

test('nothing is spoken because a second went by', async () => {
  const { terminal, pass } = await speaking();
  await terminal.press(' ', said('set 1 of 3'));
  await terminal.press(' ', said('LIFT.'));
  await terminal.press(' ', said('saved as planned'));
  expect(terminal.screen()).not.toMatch(RUNNING_CLOCK);
  const before = withoutTitles(terminal.raw).length;
  for (let second = 0; second < 60; second += 1) await pass(1);
  await pass(30);
  await terminal.until(said('Half of the rest is over.'));
  const spoken = withoutTitles(terminal.raw).slice(before);
  expect(spoken.split('Half of the rest is over.')).toHaveLength(2);
  expect(spoken.match(/Next:/g)).toHaveLength(1);
});

const withoutTitles = (raw: string) => raw.replace(/\u001b\][^\u0007]*\u0007/g, '');
