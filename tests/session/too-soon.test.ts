import fc from 'fast-check';
import { expect, test } from 'vitest';
import { resultsOf } from '../../src/session/results.ts';
import { cluster, counts, lift, play, prescription, straight } from './a-session.ts';

test('a set cannot be put down before it could have been lifted', () => {
  const session = play(prescription(straight())).send('start').wait(1.4);
  expect(session.refusal('put-down')).toBe(
    'No set is over so soon. Lift; then space puts it down.',
  );
  expect(counts(session.wait(0.1).send('put-down'), 0)).toEqual([6]);
});

test('nor the next one started, or the session closed, by the key that put it down', () => {
  const session = lift(play(prescription(straight())));
  expect(session.wait(1).refusal('start')).toContain('put down just now');
  session.wait(1);
  lift(lift(session));
  for (const end of ['confirm', { do: 'close', how: 'finished' }, { do: 'close', how: 'as-it-is' }])
    expect(session.refusal(end as 'confirm')).toContain('put down just now');
  session.wait(1.5).send('confirm').send({ do: 'close', how: 'finished' });
});

test('a space meant for lifting now does not put down the mini-set that just began by itself', () => {
  const session = lift(play(prescription(cluster()))).wait(10.2);
  expect(session.stage()).toMatchObject({ kind: 'lifting', byItself: true });
  expect(session.refusal('put-down')).toContain('so soon');
  expect(counts(session.wait(5).send('put-down'), 0)).toEqual([14, 4]);
});

test('a clock set back in the middle of a set does not keep the lifter from putting it down', () => {
  const session = play(prescription(straight())).send('start');
  const { wall } = session.now();
  session.setClock({ wall: wall - 3_600_000, up: null, boot: null });
  expect(counts(session.send('put-down'), 0)).toEqual([6]);
});

test('however often a key comes within two seconds, no more than one set is done', () => {
  const act = fc.constantFrom('start' as const, 'put-down' as const, 'confirm' as const);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(act, fc.integer({ min: 0, max: 60 })), { maxLength: 60 }),
      (keys) => {
        const session = play(prescription(straight(), cluster()));
        let spent = 0;
        for (const [command, ms] of keys) {
          if (spent + ms > 2_000) break;
          spent += ms;
          session.wait(ms / 1000).tried(command);
        }
        expect(resultsOf(session.state()).flatMap(({ sets }) => sets).length).toBeLessThanOrEqual(
          1,
        );
        expect(session.state().stage.kind).not.toBe('closed');
      },
    ),
  );
});
