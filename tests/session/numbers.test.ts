import { describe, expect, test } from 'vitest';
import { openSets } from '../../src/session/next-set.ts';
import { resultsOf } from '../../src/session/results.ts';
import { kilograms, type Mass } from '../../src/training/mass.ts';
import {
  cluster,
  counts,
  lift,
  type Play,
  play,
  prescription,
  setId,
  straight,
} from './a-session.ts';

const rows = (): Play => play(prescription(straight()));
const entered = (session: Play) =>
  session.state().exercises[0]?.done.map((set) => set.entered) ?? [];

test('a set is as planned until it is confirmed or typed', () => {
  const session = lift(lift(lift(rows())));
  session.send({ do: 'amend', of: setId(session, 0, 1), numbers: { reserve: 0 } });
  expect(entered(session)).toEqual(['as-planned', 'typed', 'as-planned']);
  expect(openSets(session.state())).toHaveLength(2);
  session.send('confirm');
  expect(entered(session)).toEqual(['confirmed', 'typed', 'confirmed']);
  expect(session.refusal('confirm')).toBe('No set waits to be confirmed.');
});

test('numbers may be typed while the set is being lifted', () => {
  const session = rows().send('start');
  session.send({ do: 'put-down', numbers: { count: 8, reserve: 3 } });
  expect(session.state().exercises[0]?.done).toMatchObject([
    { count: 8, reserve: 3, entered: 'typed' },
  ]);
});

test('a load alone says nothing of the reps', () => {
  const session = rows().send('start');
  session.send({ do: 'put-down', numbers: { load: kilograms(77.5) } });
  expect(session.state().exercises[0]?.done).toMatchObject([
    { load: kilograms(77.5), count: 6, entered: 'as-planned' },
  ]);
});

test('the sets after it stay at the load that was typed', () => {
  const session = lift(rows());
  session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { load: kilograms(77.5) } });
  expect(lift(session).state().exercises[0]?.done[1]?.load).toBe(kilograms(77.5));
});

test('in a first session the load is asked for, once', () => {
  const session = play(prescription(straight({ load: null, move: 'start' })));
  session.send('start').wait(20);
  expect(session.refusal('put-down')).toBe(
    'No load is known yet for Row. Type the load that was lifted.',
  );
  session.send({ do: 'put-down', numbers: { load: kilograms(60) } });
  expect(lift(session).state().exercises[0]?.done[1]?.load).toBe(kilograms(60));
});

describe('numbers that no set has are refused in a sentence', () => {
  const tooMuch = 1_001_000_000_000 as Mass;
  test.each([
    [{ count: -1 }, 'A set cannot have -1 reps: expected a whole number from 0 to 60.'],
    [{ count: 99 }, 'A set cannot have 99 reps'],
    [{ count: 5.5 }, 'A set cannot have 5.5 reps'],
    [{ count: Number.NaN }, 'A set cannot have NaN reps'],
    [{ reserve: -1 }, '-1 is no number of reps in reserve'],
    [{ reserve: 11 }, '11 is no number of reps in reserve'],
    [{ count: 0, reserve: 2 }, 'A set of no reps has none in reserve, so not 2.'],
    [{ load: -1 as Mass }, 'Type a load from 0 to 1000 kg'],
    [{ load: tooMuch }, 'Type a load from 0 to 1000 kg'],
  ])('%o', (numbers, sentence) => {
    const session = lift(rows());
    expect(session.refusal({ do: 'amend', of: setId(session, 0, 0), numbers })).toContain(sentence);
    expect(session.send('start').wait(20).refusal({ do: 'put-down', numbers })).toContain(sentence);
  });

  test.each(['barbell', 'dumbbell'] as const)('a %s that weighs nothing', (loading) => {
    const session = lift(play(prescription(straight({ loading }))));
    const typed = {
      do: 'amend',
      of: setId(session, 0, 0),
      numbers: { load: kilograms(0) },
    } as const;
    expect(session.refusal(typed)).toContain('weighs something');
  });

  test('but a stack or a body can be loaded with nothing, and a body with help', () => {
    for (const [loading, load] of [
      ['stack', 0],
      ['bodyweight', 0],
      ['bodyweight', -30],
    ] as const) {
      const basis = loading === 'bodyweight' ? 'added' : 'total';
      const session = lift(play(prescription(straight({ loading, basis }))));
      session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { load: kilograms(load) } });
      expect(session.state().exercises[0]?.done[0]?.load).toBe(kilograms(load));
    }
  });

  test('the most that can be typed is 60 reps, ten in reserve and a ton', () => {
    const session = lift(rows());
    const most = { count: 60, reserve: 10, load: kilograms(1000) };
    session.send({ do: 'amend', of: setId(session, 0, 0), numbers: most });
    expect(session.state().exercises[0]?.done).toMatchObject([most]);
  });

  test('a set missed under the bar has no reps, and counts', () => {
    const session = play(prescription(straight())).send('start').wait(4);
    session.send({ do: 'put-down', numbers: { count: 0, failed: true } });
    expect(resultsOf(session.state())[0]?.sets).toEqual([
      {
        id: 'file:2',
        load: kilograms(80),
        count: 0,
        reserve: null,
        failed: true,
        entered: 'typed',
      },
    ]);
  });

  test('a rep that was tried and failed is known until reps in reserve are told', () => {
    const session = lift(play(prescription(straight())));
    const of = setId(session, 0, 0);
    session.send({ do: 'amend', of, numbers: { reserve: 0, failed: true } });
    expect(session.state().exercises[0]?.done[0]).toMatchObject({ reserve: 0, failed: true });
    session.send({ do: 'amend', of, numbers: { reserve: 1 } });
    expect(session.state().exercises[0]?.done[0]).toMatchObject({ reserve: 1, failed: false });
  });

  test('effort that nobody told stays untold', () => {
    expect(lift(play(prescription(straight()))).state().exercises[0]?.done).toMatchObject([
      { count: 6, reserve: null },
    ]);
  });

  test('a mini-set that did not come up has none, and ends the cluster', () => {
    const session = lift(play(prescription(cluster()))).wait(12);
    session.send({ do: 'put-down', numbers: { count: 0 } });
    expect(counts(session, 0)).toEqual([14, 0]);
    expect(session.state().exercises[0]?.clusterEnd).toBe('fewer-reps');
  });

  test('help from a band is a load below nothing, of a body weight lift alone', () => {
    const pullUps = straight({ basis: 'added', loading: 'bodyweight', load: kilograms(0) });
    const session = play(prescription(pullUps)).send('start');
    session.send({ do: 'put-down', numbers: { load: kilograms(-15) } });
    expect(session.state().exercises[0]?.done).toMatchObject([{ load: kilograms(-15) }]);
  });

  test('a set that is not there', () => {
    expect(rows().refusal({ do: 'amend', of: 'file:7', numbers: { count: 5 } })).toContain(
      'There is no such set to correct.',
    );
  });
});

describe('a timed hold', () => {
  const plank = straight({
    counts: 'seconds',
    range: [30, 60],
    sets: [{ aim: 45, range: [30, 60] }],
  });

  test('counts down to the seconds aimed at, and has no reps in reserve', () => {
    const session = play(prescription(plank)).send('start').wait(30);
    expect(session.stage()).toMatchObject({ kind: 'lifting', holdLeftMs: 15_000 });
    session.wait(20).send('put-down');
    expect(session.state().exercises[0]?.done).toMatchObject([{ count: 50, reserve: null }]);
  });

  test('put down early counts the seconds it was held', () => {
    const session = lift(play(prescription(plank)), 31.4);
    expect(counts(session, 0)).toEqual([31]);
  });

  test('of each side runs over both, one after the other, and counts half', () => {
    const side = { ...plank, perSide: true };
    const session = play(prescription(side)).send('start').wait(30);
    expect(session.stage()).toMatchObject({ holdLeftMs: 60_000, sideLeftMs: 15_000 });
    session.wait(62.9).send('put-down');
    expect(counts(session, 0)).toEqual([46]);
  });

  test('takes more than sixty seconds, which are no reps', () => {
    const session = lift(play(prescription(plank)), 90);
    session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { count: 90 } });
    expect(counts(session, 0)).toEqual([90]);
  });
});
