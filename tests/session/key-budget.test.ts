import { expect, test } from 'vitest';
import type { SessionCommand } from '../../src/session/command.ts';
import { cluster, counts, play, prescription, setId, straight } from './a-session.ts';

/** Commands sent, by the key that each of them is. */
function counting(session: ReturnType<typeof play>) {
  let keys = 0;
  return {
    press: (command: SessionCommand['do'], seconds: number) => {
      session.send(command).wait(seconds);
      keys += 1;
    },
    keys: () => keys,
  };
}

test('a straight set done as planned costs two keys and is saved with what was aimed at', () => {
  const session = play(prescription(straight()));
  const { press, keys } = counting(session);
  press('start', 20);
  press('put-down', 0);
  expect(keys()).toBe(2);
  expect(session.state().exercises[0]?.done).toMatchObject([
    { count: 6, reserve: null, load: 80_000_000_000, entered: 'as-planned' },
  ]);
});

test('a cluster of five sets done as planned costs six keys', () => {
  const session = play(prescription(cluster()));
  const { press, keys } = counting(session);
  press('start', 40);
  press('put-down', 22);
  for (let mini = 0; mini < 4; mini += 1) press('put-down', 22);
  expect(keys()).toBe(6);
  expect(counts(session, 0)).toEqual([14, 4, 4, 4, 4]);
  expect(session.stage().kind).toBe('all-done');
  expect(session.facts().at(-1)).toBe('cluster-ended');
});

test('correcting the set before costs one command, whatever runs meanwhile', () => {
  const session = play(prescription(straight()));
  session.send('start').wait(20).send('put-down').wait(5);
  session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { count: 7, reserve: 0 } });
  expect(session.stage()).toMatchObject({ kind: 'resting', restedMs: 5_000 });
  expect(session.state().exercises[0]?.done).toMatchObject([
    { count: 7, reserve: 0, entered: 'typed' },
  ]);
});
