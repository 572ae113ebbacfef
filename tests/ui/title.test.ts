import { expect, test } from 'vitest';
import { progressOf, titleOf } from '../../src/ui/phase.ts';
import { lift, type Play, play, prescription, straight } from '../session/a-session.ts';

const seen = (session: Play) => ({ session: session.state(), now: session.now() });
const opened = () => play(prescription(straight()));
/** Rests of 3 to 5 minutes. */
const resting = (seconds: number) => lift(opened()).wait(seconds);

test('the title tells the time left in steps of fifteen seconds, and each second of the last fifteen', () => {
  const at = (seconds: number) => titleOf(seen(resting(seconds)));
  expect([0, 1, 14, 15, 16].map(at)).toEqual([
    '3:00 rest',
    '3:00 rest',
    '3:00 rest',
    '2:45 rest',
    '2:45 rest',
  ]);
  expect([164, 165, 166, 179].map(at)).toEqual([
    '0:30 rest',
    '0:15 rest',
    '0:14 rest',
    '0:01 rest',
  ]);
});

test('and what is to be done at any other time', () => {
  expect(titleOf({ session: null, now: opened().now() })).toBe('holdfast');
  expect(titleOf(seen(opened()))).toBe('ready');
  expect(titleOf(seen(opened().send('start')))).toBe('lift');
  expect(titleOf(seen(resting(400)))).toBe('lift');
  expect(titleOf(seen(resting(10).send('pause')))).toBe('paused');
  expect(titleOf(seen(lift(lift(lift(opened()).wait(200)).wait(200))))).toBe('done');
  expect(titleOf(seen(opened().send({ do: 'close', how: 'as-it-is' })))).toBe('holdfast');
});

test('the bar of a terminal fills until the late end of the rest, and is none without one', () => {
  const at = (seconds: number) => progressOf(seen(resting(seconds)));
  expect([0, 75, 150].map(at)).toEqual([0, 0.25, 0.5]);
  expect(progressOf(seen(opened()))).toBeNull();
  expect(progressOf(seen(resting(10).send('pause')))).toBeNull();
  expect(progressOf({ session: null, now: opened().now() })).toBeNull();
});
