import { describe, expect, test } from 'vitest';
import { plannedSets } from '../../src/session/next-set.ts';
import { resultsOf } from '../../src/session/results.ts';
import { kilograms } from '../../src/training/mass.ts';
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

const row = straight();
const press = straight({ lift: 'press', name: 'Press', track: 'press straight 5-8' });
const pull = straight({
  lift: 'pull',
  name: 'Pull',
  track: 'pull straight 5-8',
  load: kilograms(60),
});
const warmUp = [30, 50].map((load) => ({ load: kilograms(load), reps: 5 }));

const next = (session: Play) => {
  const stage = session.stage();
  return 'next' in stage ? [stage.next.exercise, stage.next.role, stage.next.index] : stage.kind;
};

describe('warm-ups', () => {
  const warm = () => play(prescription({ ...row, warmUp }, press));

  test('come first, with a minute between them, and are no results', () => {
    const session = warm();
    expect(next(session)).toEqual([0, 'warm-up', 0]);
    expect(lift(session).stage()).toMatchObject({ next: { index: 1 }, toEarlyMs: 60_000 });
    expect(next(lift(session))).toEqual([0, 'straight', 0]);
    expect(resultsOf(session.state())).toEqual([]);
  });

  test('are skipped by one command, from the first or in the middle', () => {
    expect(next(warm().send('skip-set'))).toEqual([0, 'straight', 0]);
    expect(next(lift(warm()).send('skip-set'))).toEqual([0, 'straight', 0]);
  });
});

describe('another order', () => {
  const session = () => play(prescription(row, press));

  test('the chosen exercise goes first, then the planned order again', () => {
    const chosen = lift(session()).send({ do: 'choose-exercise', exercise: 1 });
    expect(next(chosen)).toEqual([1, 'straight', 0]);
    lift(lift(lift(chosen)));
    expect(next(chosen)).toEqual([0, 'straight', 1]);
  });

  test('what is done is not chosen again, what was left out may be', () => {
    const done = lift(lift(lift(session())));
    expect(done.refusal({ do: 'choose-exercise', exercise: 0 })).toContain('Row is done.');
    expect(done.refusal({ do: 'choose-exercise', exercise: 2 })).toContain('the session has 2');
    const left = lift(session()).send({ do: 'skip-exercise', exercise: 0 });
    expect(next(left)).toEqual([1, 'straight', 0]);
    expect(next(left.send({ do: 'choose-exercise', exercise: 0 }))).toEqual([0, 'straight', 1]);
  });
});

test('a skipped set leaves the exercise unfinished', () => {
  const session = lift(lift(play(prescription(row)))).send('skip-set');
  expect(session.stage().kind).toBe('all-done');
  expect(resultsOf(session.state())).toMatchObject([{ finished: false, sets: [{}, {}] }]);
});

test('an added set asks for what the last one asked for, also when all are done', () => {
  const session = lift(lift(lift(play(prescription(row)))));
  expect(session.stage().kind).toBe('all-done');
  expect(counts(lift(session.send('add-set')), 0)).toEqual([6, 6, 5, 5]);
  expect(resultsOf(session.state())).toMatchObject([{ finished: true }]);
  expect(play(prescription(cluster())).refusal('add-set')).toContain('ends by its own rule');
});

test('a set is added to the exercise just done, though the next one is due', () => {
  const session = lift(lift(lift(play(prescription(row, press))))).send('add-set');
  expect(next(session)).toEqual([0, 'straight', 3]);
});

describe('another load', () => {
  const by = straight({
    load: kilograms(75),
    sets: [7, 7, 7].map((aim) => ({ aim, range: [5, 8] })),
  });

  test('holds for the sets that are left; the result is judged by what the first set was asked', () => {
    const session = lift(play(prescription(row)));
    session.send({ do: 'replace', exercise: 0, by, because: 'after-a-miss' });
    lift(lift(session));
    expect(resultsOf(session.state())).toMatchObject([
      {
        exercise: { load: kilograms(80) },
        finished: true,
        sets: [
          { load: kilograms(80), count: 6 },
          { load: kilograms(75), count: 7 },
          { load: kilograms(75), count: 7 },
        ],
      },
    ]);
  });

  test('before the first set is what the result is judged by', () => {
    const session = play(prescription(row));
    session.send({ do: 'replace', exercise: 0, by, because: 'other-load' });
    expect(resultsOf(lift(session).state())).toMatchObject([
      { exercise: { load: kilograms(75) }, sets: [{ load: kilograms(75) }] },
    ]);
  });

  test('is refused when no set is left', () => {
    const session = lift(lift(lift(play(prescription(row)))));
    expect(session.refusal({ do: 'replace', exercise: 0, by, because: 'other-load' })).toContain(
      'Every set of Row is done. Add a set first.',
    );
  });
});

describe('a shorter session', () => {
  const asIs = { exercise: 0, sets: 3, rest: row.rest };
  const { restBetween } = prescription(row, press);
  const shorter = (change: object) => ({
    do: 'shorten' as const,
    minutes: 20,
    exercises: [asIs],
    restBetween,
    cut: [],
    ...change,
  });

  test('has fewer sets, shorter rests or lifts that alternate', () => {
    for (const change of [
      { exercises: [{ ...asIs, sets: 2 }] },
      { exercises: [{ ...asIs, rest: { from: 120, to: row.rest.to - 1 } }] },
      { restBetween: { ...restBetween, to: restBetween.to - 1 } },
      { pairs: [[0, 1]] },
    ]) {
      const session = lift(play(prescription(row, press))).send(shorter(change));
      expect(session.state().events.at(-1)?.type).toBe('day-shortened');
    }
  });

  test('is refused where nothing of it is less', () => {
    for (const change of [
      {},
      { pairs: [] },
      { exercises: [{ exercise: 7, sets: 1, rest: row.rest }] },
      { exercises: [{ ...asIs, sets: 4 }] },
    ]) {
      expect(play(prescription(row, press)).refusal(shorter(change))).toContain(
        'What is left fits into that time as it is.',
      );
    }
  });
});

describe('another lift', () => {
  const swap = { do: 'replace', exercise: 0, because: 'other-lift' } as const;

  test('in the middle takes over the sets that are left; each lift has its own result', () => {
    const session = lift(play(prescription(row, press))).send({ ...swap, by: pull });
    expect(session.stage()).toMatchObject({ next: { index: 0 }, toEarlyMs: 120_000 });
    lift(lift(session));
    expect(next(session)).toEqual([1, 'straight', 0]);
    expect(resultsOf(session.state())).toMatchObject([
      { exercise: { lift: 'row' }, finished: false, sets: [{ load: kilograms(80) }] },
      { exercise: { lift: 'pull' }, finished: false, sets: [{ load: kilograms(60) }, {}] },
    ]);
  });

  test('leaves the sets before it to be corrected as what they were', () => {
    const session = lift(play(prescription(row)));
    const first = setId(session, 0, 0);
    session.send({ ...swap, by: { ...pull, counts: 'seconds' } });
    const amend = (count: number) => ({ do: 'amend', of: first, numbers: { count } }) as const;
    expect(session.refusal(amend(61))).toContain('61 reps: expected a whole number from 0 to 60');
    lift(session.send(amend(60)), 61);
    expect(resultsOf(session.state())).toMatchObject([{ sets: [{ count: 60 }] }, { sets: [{}] }]);
    session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { count: 61 } });
  });

  test('before the first set takes the place whole', () => {
    const session = play(prescription(row)).send({ ...swap, by: pull });
    lift(lift(lift(session)));
    expect(session.stage().kind).toBe('all-done');
    expect(resultsOf(session.state())).toMatchObject([
      { exercise: { lift: 'pull' }, finished: true },
    ]);
  });

  test('and back again goes on where it was left', () => {
    const session = lift(play(prescription(row))).send({ ...swap, by: pull });
    session.send({ ...swap, by: row });
    expect(next(session)).toEqual([0, 'straight', 1]);
    lift(lift(session));
    expect(resultsOf(session.state())).toMatchObject([
      { exercise: { lift: 'row' }, finished: true, sets: [{}, {}, {}] },
    ]);
  });

  test('brings its own warm-ups, and comes to one set at least', () => {
    const session = lift(lift(play(prescription(row))));
    session.send({ ...swap, by: { ...pull, warmUp } });
    expect(next(session)).toEqual([0, 'warm-up', 0]);
    const [exercise] = session.state().exercises;
    expect(exercise && plannedSets(exercise)).toBe(1);
  });

  test('in place of a cluster begins with sets of its own', () => {
    const session = lift(play(prescription(cluster())))
      .wait(12)
      .send('put-down');
    session.send({ ...swap, by: pull });
    expect(next(session)).toEqual([0, 'straight', 0]);
    expect(resultsOf(session.state())).toMatchObject([
      { exercise: { style: 'cluster' }, finished: false, sets: [{}, {}] },
    ]);
  });
});

describe('pain', () => {
  const hurt = () => lift(play(prescription(row, press))).send({ do: 'mark-pain', exercise: 0 });

  test('ends the remaining sets, and is kept with the lift', () => {
    expect(next(hurt())).toEqual([1, 'straight', 0]);
    expect(resultsOf(hurt().state())).toMatchObject([{ pain: true, finished: false, sets: [{}] }]);
    expect(hurt().refusal({ do: 'mark-pain', exercise: 0 })).toContain('marked on Row already');
  });

  test('the lifter may go on, or go on with less', () => {
    expect(next(hurt().send({ do: 'choose-exercise', exercise: 0 }))).toEqual([0, 'straight', 1]);
    const by = straight({ load: kilograms(60) });
    const lighter = hurt().send({ do: 'replace', exercise: 0, by, because: 'lighter' });
    expect(resultsOf(lift(lighter).state())).toMatchObject([
      { pain: true, sets: [{ load: kilograms(80) }, { load: kilograms(60) }] },
    ]);
  });

  test('belongs to the lift that hurt, not to the one that took its place', () => {
    const session = play(prescription(row)).send({ do: 'mark-pain', exercise: 0 });
    session.send({ do: 'replace', exercise: 0, by: pull, because: 'other-lift' });
    expect(resultsOf(lift(session).state())).toMatchObject([
      { exercise: { lift: 'row' }, pain: true, sets: [] },
      { exercise: { lift: 'pull' }, pain: false, sets: [{}] },
    ]);
  });
});

test('a started set that another plan overtakes is not under way any more', () => {
  const session = play(prescription(row, press)).send('start');
  session.send({ do: 'choose-exercise', exercise: 1 });
  expect(session.stage()).toMatchObject({ kind: 'ready', next: { exercise: 1 } });
});
