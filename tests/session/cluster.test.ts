import { describe, expect, test } from 'vitest';
import { fold as foldAll } from '../../src/session/apply.ts';
import { resultsOf } from '../../src/session/results.ts';
import {
  cluster,
  counts,
  lift,
  meaning,
  type Play,
  play,
  prescription,
  setId,
  straight,
} from './a-session.ts';

/** A cluster, then rows; its lead put down at once. */
const begun = (): Play => play(prescription(cluster(), straight())).send('start').send('put-down');

const mini = (session: Play, count?: number): Play =>
  session.wait(12).send(count === undefined ? 'put-down' : { do: 'put-down', numbers: { count } });

describe('a mini-set starts by itself', () => {
  test('at the early end of its rest, and not before', () => {
    const session = begun().wait(9.9);
    expect(session.stage()).toMatchObject({ kind: 'resting', toEarlyMs: 100, toLateMs: 5_100 });
    expect(session.refusal('put-down')).toContain('No set is under way');
    session.wait(0.1);
    expect(session.stage()).toMatchObject({ kind: 'lifting', byItself: true, liftedMs: 0 });
    expect(session.wait(3).stage()).toMatchObject({ liftedMs: 3_000, toLateMs: 2_000 });
  });

  test('and is put down without having been started', () => {
    const session = begun().wait(25).send('put-down');
    expect(session.facts().slice(-2)).toEqual(['set-done', 'set-done']);
    const [, first] = session.state().exercises[0]?.done ?? [];
    expect(first?.startedAt?.wall).toBe((first?.at.wall ?? 0) - 15_000);
  });

  test('unless the rest was made longer', () => {
    const session = begun().wait(12);
    expect(session.stage().kind).toBe('lifting');
    session.send({ do: 'change-rest', by: 10 });
    expect(session.stage()).toMatchObject({ kind: 'resting', toEarlyMs: 8_000 });
  });

  test('but a terminal left open for an hour is not lifting', () => {
    const session = begun().wait(3600);
    expect(session.stage()).toMatchObject({ kind: 'resting', passed: 'both' });
    expect(session.refusal('put-down')).toContain('Start the set first');
    expect(counts(session.send('start').wait(5).send('put-down'), 0)).toEqual([14, 4]);
  });
});

describe('the cluster is over', () => {
  test('when a mini-set has fewer reps than the first', () => {
    const session = mini(mini(mini(begun(), 5), 5), 4);
    expect(session.events().at(-1)).toMatchObject({ type: 'cluster-ended', reason: 'fewer-reps' });
    expect(session.stage()).toMatchObject({ kind: 'resting', next: { exercise: 1 } });
  });

  test('when the first mini-set has fewer than three', () => {
    expect(mini(begun(), 2).state().exercises[0]?.clusterEnd).toBe('fewer-reps');
  });

  test('at the most sets, and only before the last of these it says so', () => {
    const session = begun();
    const saysLast = [1, 2, 3, 4].map(() => {
      const stage = session.wait(5).stage();
      mini(session);
      return 'lastOne' in stage && stage.lastOne;
    });
    expect(saysLast).toEqual([false, false, false, true]);
    expect(session.state().exercises[0]?.clusterEnd).toBe('most-sets');
  });

  test('on the word of the lifter, who has not finished it', () => {
    const session = mini(begun()).send('end-cluster');
    expect(resultsOf(session.state())).toMatchObject([{ finished: false, sets: [{}, {}] }]);
  });

  test('when the lifter leaves it for another exercise', () => {
    const session = mini(begun()).send({ do: 'choose-exercise', exercise: 1 });
    expect(session.state().exercises[0]?.clusterEnd).toBe('lifter');
    expect(session.stage()).toMatchObject({ next: { exercise: 1, role: 'straight' } });
  });
});

test('later mini-sets aim at the reps of the first, which was told in its own rest', () => {
  const session = mini(begun());
  session.send({ do: 'amend', of: setId(session, 0, 1), numbers: { count: 5 } });
  mini(session);
  expect(counts(session, 0)).toEqual([14, 5, 5]);
});

describe('a late correction', () => {
  test('ends the cluster while it is the present exercise', () => {
    const session = mini(mini(begun(), 5));
    expect(session.stage()).toMatchObject({ next: { role: 'mini' } });
    session.send({ do: 'amend', of: setId(session, 0, 2), numbers: { count: 3 } });
    expect(session.stage()).toMatchObject({ next: { exercise: 1 } });
  });

  test('takes a wrong end back, and the rest goes on from where it began', () => {
    const session = mini(mini(begun(), 5), 4).wait(3);
    session.send({ do: 'amend', of: setId(session, 0, 2), numbers: { count: 5 } });
    expect(session.facts().at(-1)).toBe('cluster-resumed');
    expect(session.stage()).toMatchObject({ next: { role: 'mini', index: 2 }, restedMs: 3_000 });
  });

  test('changes numbers only, once another exercise is under way', () => {
    const session = lift(mini(mini(begun(), 5), 4));
    session.send({ do: 'amend', of: setId(session, 0, 2), numbers: { count: 5 } });
    expect(session.state().exercises[0]?.clusterEnd).toBe('fewer-reps');
    expect(counts(session, 0)).toEqual([14, 5, 5]);
  });

  test('never takes a recorded set away', () => {
    const session = mini(mini(mini(begun(), 5), 5), 5);
    session.send({ do: 'amend', of: setId(session, 0, 2), numbers: { count: 3 } });
    expect(counts(session, 0)).toEqual([14, 5, 3, 5]);
    expect(session.state().exercises[0]?.clusterEnd).toBe('fewer-reps');
  });

  test('does not reopen what the lifter ended', () => {
    const session = mini(begun(), 5).send('end-cluster');
    session.send({ do: 'amend', of: setId(session, 0, 1), numbers: { count: 4 } });
    expect(session.state().exercises[0]?.clusterEnd).toBe('lifter');
  });
});

test('one undo takes back a mini-set with the end that the rule made of it', () => {
  const session = mini(begun(), 5).wait(12);
  const before = meaning(session.state());
  session.send({ do: 'put-down', numbers: { count: 3 } });
  expect(session.state().exercises[0]?.clusterEnd).toBe('fewer-reps');
  expect(meaning(session.send('undo').state())).toEqual(before);
  expect(session.send('redo').state().exercises[0]?.clusterEnd).toBe('fewer-reps');
});

test('the end that an event tells stands, whatever the rule of today would say', () => {
  // A version with another rule went on after a drop, then ended the cluster early.
  const session = begun();
  const { zone } = session.events()[0] ?? { zone: 0 };
  const odd = [
    { type: 'set-done', exercise: 0, role: 'mini', index: 0, count: 5 },
    { type: 'set-done', exercise: 0, role: 'mini', index: 1, count: 2 },
    { type: 'set-done', exercise: 0, role: 'mini', index: 2, count: 4 },
    { type: 'cluster-ended', exercise: 0, reason: 'most-sets' },
  ].map((fact, index) => ({
    load: 8_000_000_000,
    reserve: null,
    entered: 'typed',
    ...fact,
    id: `file:${10 + index}`,
    at: session.now(),
    zone,
  }));
  const state = foldAll([...session.events(), ...odd] as never);
  expect(state && resultsOf(state)[0]).toMatchObject({
    finished: true,
    sets: [14, 5, 2, 4].map((count) => ({ count })),
  });
});
