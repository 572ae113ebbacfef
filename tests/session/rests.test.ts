import { describe, expect, test } from 'vitest';
import type { Reading } from '../../src/training/reading.ts';
import { lift, type Play, play, prescription, readingAt, straight } from './a-session.ts';

/** Rows, resting after the first set, which was put down 20 s after the opening. */
const resting = (): Play => lift(play(prescription(straight(), straight({ track: 'other' }))));

describe('a rest shows both of its ends', () => {
  test.each([
    [0, 180_000, 300_000, 'neither'],
    [179.999, 1, 120_001, 'neither'],
    [180, 0, 120_000, 'early'],
    [299.999, 0, 1, 'early'],
    [300, 0, 0, 'both'],
    [7200, 0, 0, 'both'],
  ] as const)('after %s s', (seconds, toEarlyMs, toLateMs, passed) => {
    const stage = resting().wait(seconds).stage();
    expect(stage).toMatchObject({ kind: 'resting', toEarlyMs, toLateMs, passed });
  });
});

test('the rest before another exercise is the one between exercises', () => {
  const session = lift(lift(resting()));
  expect(session.stage()).toMatchObject({ next: { exercise: 1 }, toEarlyMs: 120_000 });
});

test('the first set of a session has no rest before it', () => {
  expect(play(prescription(straight())).stage()).toMatchObject({ kind: 'ready' });
});

test('a rest is made longer and shorter, never below nothing, and the next one is as prescribed', () => {
  const session = resting().wait(60).send({ do: 'change-rest', by: 30 });
  expect(session.stage()).toMatchObject({ toEarlyMs: 150_000, toLateMs: 270_000 });
  session.send({ do: 'change-rest', by: -500 });
  // No less than no rest: what is added next is added to nothing.
  expect(session.stage()).toMatchObject({ toEarlyMs: 0, toLateMs: 60_000, passed: 'early' });
  expect(session.refusal({ do: 'change-rest', by: -30 })).toContain('as short as it can be');
  session.send({ do: 'change-rest', by: 90 });
  expect(session.stage()).toMatchObject({ toEarlyMs: 30_000 });
  expect(lift(session).stage()).toMatchObject({ toEarlyMs: 180_000 });
  expect(session.refusal({ do: 'change-rest', by: 0 })).toContain('whole seconds');
});

test('a rest is shortened to nothing, and then no further', () => {
  const session = resting().send({ do: 'change-rest', by: -179 });
  expect(session.stage()).toMatchObject({ running: { rest: { from: 1 } } });
  expect(session.send({ do: 'change-rest', by: -30 }).stage()).toMatchObject({
    running: { rest: { from: 0 } },
  });
  expect(session.refusal({ do: 'change-rest', by: -1 })).toContain('as short as it can be');
});

describe('a pause', () => {
  test('stands outside the rest, and every clock stands still in it', () => {
    const session = resting().wait(60).send('pause').wait(600);
    expect(session.stage()).toMatchObject({ paused: true, restedMs: 60_000 });
    session.send('resume').wait(10);
    expect(session.stage()).toMatchObject({ paused: false, restedMs: 70_000 });
  });

  test('ends when the next set is started', () => {
    const session = resting().send('pause').wait(600).send('start').wait(5);
    expect(session.stage()).toMatchObject({ kind: 'lifting', paused: false, liftedMs: 5_000 });
    expect(session.state().pausedMs).toBe(600_000);
  });

  test('in a set does not count as lifting', () => {
    const session = resting().send('start').wait(5).send('pause').wait(60).send('resume').wait(5);
    expect(session.stage()).toMatchObject({ kind: 'lifting', liftedMs: 10_000 });
  });

  test('is not begun or ended twice', () => {
    const session = resting().send('pause');
    expect(session.refusal('pause')).toBe('The session is paused already.');
    expect(session.send('resume').refusal('resume')).toBe('The session is not paused.');
  });
});

describe('time passed in a rest of which 60 s are over by the steady clock', () => {
  const put = readingAt(20);
  const cases: readonly (readonly [string, Reading, number, number])[] = [
    ['nothing happened', readingAt(80), 60_000, 0],
    [
      'the clock was set back an hour',
      { ...readingAt(80), wall: readingAt(-3520).wall },
      60_000,
      -3_600_000,
    ],
    [
      'the clock was set forward an hour',
      { ...readingAt(80), wall: readingAt(3680).wall },
      60_000,
      3_600_000,
    ],
    [
      'the clock was trimmed by a second',
      { ...readingAt(80), wall: readingAt(81).wall },
      60_000,
      0,
    ],
    ['the machine slept for eight hours', readingAt(20 + 8 * 3600), 8 * 3600_000, 0],
    ['the machine was started again', { ...readingAt(80), up: 12_000, boot: 'boot-2' }, 60_000, 0],
    ['there is only the wall clock', { wall: readingAt(80).wall, up: null, boot: null }, 60_000, 0],
    ['only a wall clock, set back', { wall: readingAt(-3520).wall, up: null, boot: null }, 0, 0],
  ];
  test.each(cases)('%s', (_, now, restedMs, clockSetMs) => {
    const session = resting();
    expect(session.now()).toEqual(put);
    const stage = session.setClock(now).stage();
    expect(stage).toMatchObject({ kind: 'resting', restedMs, clockSetMs });
  });
});
