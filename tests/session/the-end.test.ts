import { describe, expect, test } from 'vitest';
import { resultsOf, sessionDoneOf } from '../../src/session/results.ts';
import { summaryOf } from '../../src/session/summary.ts';
import { cluster, lift, play, prescription, START, straight } from './a-session.ts';

const whole = () => lift(lift(lift(play(prescription(straight())))));

test('a session is finished when every set is done or left out, else closed as it is', () => {
  const half = lift(play(prescription(straight())));
  expect(half.refusal({ do: 'close', how: 'finished' })).toBe(
    'Some sets are neither done nor left out. Close the session as it is.',
  );
  expect(sessionDoneOf(half.send({ do: 'close', how: 'as-it-is' }).state()).how).toBe('abandoned');
  expect(sessionDoneOf(whole().send({ do: 'close', how: 'finished' }).state()).how).toBe('closed');
});

test('once closed it takes no command but to go back', () => {
  const session = whole().send({ do: 'close', how: 'finished' });
  expect(session.refusal('start')).toContain('The session is closed.');
  expect(session.send('undo').stage().kind).toBe('all-done');
});

test('a discarded session leaves nothing behind', () => {
  expect(resultsOf(whole().send('discard').state())).toEqual([]);
});

test('sets done and planned count a cluster as one, and warm-ups not at all', () => {
  const session = lift(play(prescription(cluster(), straight()))).send('end-cluster');
  const done = sessionDoneOf(lift(session).state());
  expect(done).toMatchObject({ setsPlanned: 4, setsDone: 2 });
});

test('the date is the local one at the opening, the end that of the last set', () => {
  const session = whole()
    .wait(12 * 3600)
    .send({ do: 'close', how: 'finished' });
  const done = sessionDoneOf(session.state());
  expect(done.date.toString()).toBe('2026-11-25');
  expect([done.start, done.end]).toEqual([START, START + 63_000]);
  // 23:30 UTC is half past midnight an hour ahead.
  const late = {
    ...session.state(),
    openedAt: { wall: Date.UTC(2026, 10, 25, 23, 30), up: null, boot: null },
  };
  expect(sessionDoneOf(late).date.toString()).toBe('2026-11-26');
});

test('its summary counts the sets that it came to ask for, with those added and those left out', () => {
  const two = play(prescription(straight(), straight({ track: 'other' })));
  const session = lift(lift(two)).send('add-set');
  session.send('skip-set').send({ do: 'skip-exercise', exercise: 1 }).send('skip-set');
  expect(session.stage().kind).toBe('all-done');
  const { setsDone, setsAsked } = summaryOf(session.state(), session.now());
  expect([setsDone, setsAsked]).toEqual([2, 7]);
  session.send({ do: 'close', how: 'finished' });
  expect(summaryOf(session.state(), session.now())).toMatchObject({ setsDone, setsAsked });
});

describe('the minutes of a session', () => {
  test('run until its last set, pauses left out', () => {
    const session = lift(play(prescription(straight())))
      .wait(60)
      .send('pause')
      .wait(900);
    session.send('resume').wait(120);
    expect(summaryOf(session.state(), session.now()).minutes).toBeCloseTo(200 / 60);
    lift(session, 40).wait(5000).send('pause').wait(100).send({ do: 'close', how: 'as-it-is' });
    expect(summaryOf(session.state(), session.now()).minutes).toBeCloseTo(240 / 60);
  });

  test('stand still once no set is left, whenever it is closed', () => {
    const session = whole().wait(600);
    const { minutes } = summaryOf(session.state(), session.now());
    expect(minutes).toBeCloseTo(63 / 60);
    session.wait(60).send({ do: 'close', how: 'finished' });
    expect(summaryOf(session.state(), session.now()).minutes).toBe(minutes);
  });
});

test('cluster time stands beside the same reps as straight sets', () => {
  // Marshall 2012 (J Sci Med Sport 15(2):153–158): 20 reps at 3 s as 5 × 4 with 180 s rests take
  // 780 s, and with 20 s rests 140 s.
  const fours = cluster({
    sets: [{ aim: 4, range: [4, 4] }],
    minis: { mostSets: 5, aim: 4 },
    rest: { from: 20, to: 20 },
  });
  const session = lift(play(prescription(fours)), 12);
  for (let mini = 0; mini < 4; mini += 1) session.wait(32).send('put-down');
  expect(summaryOf(session.state(), session.now()).clusters).toEqual({
    spent: 140,
    asStraight: 780,
  });
});
