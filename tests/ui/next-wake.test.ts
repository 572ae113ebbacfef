import { describe, expect, test } from 'vitest';
import { nextWake } from '../../src/ui/phase.ts';
import { lift, type Play, play, prescription, straight } from '../session/a-session.ts';

const wake = (session: Play) => nextWake({ session: session.state(), now: session.now() });
const opened = () => play(prescription(straight()));

// Minutes of the session are shown to the nearest: they change at the half.
describe('the screen is drawn again when something on it changes by itself', () => {
  test.each([
    [0, 30_000],
    [29, 1_000],
    [30, 60_000],
    [50, 40_000],
    [89.5, 500],
    [125, 25_000],
  ])('%d s after the opening: the minutes in %d ms', (seconds, ms) => {
    expect(wake(opened().wait(seconds))).toBe(ms);
  });

  test('in a rest at each second that is left, and at each one over it', () => {
    const resting = lift(opened());
    expect(wake(resting)).toBe(1_000);
    expect(wake(resting.wait(10.3))).toBe(700);
    expect(wake(resting.wait(400))).toBe(700);
  });

  test('in a set of reps only at the minute, in a hold at each second', () => {
    expect(wake(opened().send('start').wait(10.4))).toBe(19_600);
    const hold = straight({ counts: 'seconds', basis: 'added', loading: 'bodyweight' });
    expect(wake(play(prescription(hold)).send('start').wait(10.4))).toBe(600);
  });

  test('never where nothing moves: without a session, in a pause, after the end', () => {
    expect(nextWake({ session: null, now: opened().now() })).toBeNull();
    expect(wake(lift(opened()).send('pause').wait(5))).toBeNull();
    expect(wake(opened().send({ do: 'close', how: 'as-it-is' }))).toBeNull();
  });
});
