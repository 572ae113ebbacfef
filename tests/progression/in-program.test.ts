import { describe, expect, it } from 'vitest';
import { leftOfDay } from '../../src/progression/due-day.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import { prescribeAnew } from '../../src/progression/prescribe-anew.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import { resultsOf } from '../../src/session/results.ts';
import { NOTHING_LOADED } from '../../src/training/equipment.ts';
import { kilograms } from '../../src/training/mass.ts';
import { straight as asPrescribed, play, prescription } from '../session/a-session.ts';
import { aGear } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aDay, aLift, aProgram, straight } from './a-program.ts';

const squat = straight({ lift: aLift({ key: 'squat', name: 'Squat', pattern: 'squat' }) });
const rowOfA = straight({ sets: 3, rest: { from: 180, to: 300 }, note: 'straps' });
const rowOfB = straight({ sets: 2, rest: { from: 90, to: 120 }, note: 'no straps' });
const days = [aDay('A', rowOfA, squat), aDay('B', squat, rowOfB)];
const program = aProgram([], { days, lifts: new Map([rowOfA, squat].map(liftOf)) });
const circumstances = { today: TODAY, gear: aGear() };

function liftOf({ lift }: typeof squat) {
  return [lift.key, lift] as const;
}

const dayOf = (name: 'A' | 'B', past = aPast([])) => {
  const day = days.find((each) => each.name === name);
  if (!day) throw new Error(`No day ${name}.`);
  return prescribe(program, day, past, circumstances);
};

const exerciseAt = (name: 'A' | 'B', position: number): PrescribedExercise => {
  const found = dayOf(name).exercises[position];
  if (!found) throw new Error(`No exercise ${position}.`);
  return found;
};

describe('an exercise knows where the program has it', () => {
  it('by day and position, with the lift written there', () => {
    expect(dayOf('B').exercises.map(({ inProgram }) => inProgram)).toEqual([
      { day: 'B', position: 0, lift: 'squat' },
      { day: 'B', position: 1, lift: 'row' },
    ]);
  });

  it('and with the same lift, style and range on two days another load changes its own day alone', () => {
    const past = aPast([aResult(rowOfA, { kg: 80, reps: [6, 6, 6], daysAgo: 3 })]);
    const own = dayOf('B', past).exercises[1];
    if (!own) throw new Error('The row is missing.');
    const underway = {
      prescription: dayOf('B', past),
      lifts: program.lifts,
      done: [],
      trained: [],
      equipment: NOTHING_LOADED,
    };
    const change = { kind: 'load', load: kilograms(75) } as const;
    const anew = prescribeAnew(own, change, underway, past, circumstances);
    expect(anew).toMatchObject({
      load: kilograms(75),
      inProgram: { day: 'B', position: 1, lift: 'row' },
      setsPlanned: 2,
      rest: { from: 90, to: 120 },
      note: 'no straps',
    });
    expect(anew.sets).toHaveLength(2);
  });
});

describe('a day that was begun', () => {
  // One track: what a program of old named so, or what took the place of another lift.
  const twice = dayOf('A').exercises.map((each, position) => ({
    ...each,
    track: 'one',
    name: `Exercise ${position}`,
  }));
  const whole = { ...dayOf('A'), exercises: twice };

  it('goes on with the exercise that was not done, though both are on one track', () => {
    const done = twice.slice(1);
    const { exercises } = leftOfDay(whole, { session: 'A-1', done });
    expect(exercises.map(({ name }) => name)).toEqual(['Exercise 0']);
  });

  it('counts another lift in the place of an exercise as that exercise', () => {
    const other = { ...exerciseAt('A', 0), lift: 'chin', track: 'chin straight 5-8' };
    const { exercises } = leftOfDay(dayOf('A'), { session: 'A-1', done: [other] });
    expect(exercises.map(({ name }) => name)).toEqual(['Squat']);
  });

  it('finds by its track what an edit of the file has moved since', () => {
    const moved = { ...exerciseAt('A', 1), inProgram: { day: 'A', position: 0, lift: 'squat' } };
    const { exercises } = leftOfDay(dayOf('A'), { session: 'A-1', done: [moved] });
    expect(exercises.map(({ name }) => name)).toEqual(['Row']);
  });

  it('goes by the track where an old result does not tell its place', () => {
    const { inProgram: _, ...old } = exerciseAt('A', 1);
    const { exercises } = leftOfDay(dayOf('A'), { session: 'A-1', done: [old] });
    expect(exercises.map(({ name }) => name)).toEqual(['Row']);
  });
});

describe('a track that comes twice in one session', () => {
  const own = {
    ...prescribeExercise(program, rowOfA, aPast([]), circumstances),
    move: 'hold' as const,
    inProgram: { day: 'A', position: 1, lift: 'row' },
  };
  const inPlaceOf = { ...own, inProgram: { day: 'A', position: 0, lift: 'press' } };
  const trained = { kg: 80, daysAgo: 3, rir: 1 } as const;
  const stoodIn = aResult(rowOfA, { ...trained, reps: [4, 4] }, inPlaceOf);
  const asItself = aResult(rowOfA, { ...trained, reps: [8, 8, 8] }, own);
  const next = (...results: readonly (typeof asItself)[]) =>
    prescribeExercise(program, rowOfA, aPast(results), circumstances);

  it('is one session, judged by the exercise in its own place, in whatever order they came', () => {
    expect(next(asItself)).toMatchObject({ move: 'up' });
    for (const order of [
      [stoodIn, asItself],
      [asItself, stoodIn],
    ]) {
      expect(next(...order)).toMatchObject({ move: 'up', last: { counts: [8, 8, 8] } });
    }
  });

  it('is no second pain running', () => {
    const [first, second] = [stoodIn, asItself].map((each) => ({ ...each, pain: true }));
    if (!first || !second) throw new Error('Two results were made.');
    expect(next(first, second).why.map(({ rule }) => rule)).not.toContain('pain-twice');
  });
});

describe('a session', () => {
  const day = prescription(asPrescribed(), asPrescribed({ name: 'Row again' }));

  it('of an old journal, which does not tell, has its exercises in the order of the day', () => {
    const places = play(day)
      .state()
      .exercises.map(({ prescribed }) => prescribed.inProgram);
    expect(places).toEqual([
      { day: 'A', position: 0, lift: 'row' },
      { day: 'A', position: 1, lift: 'row' },
    ]);
  });

  it('keeps two exercises on one track apart, each with its own sets and place', () => {
    const played = play(day).send('start').wait(30).send('put-down');
    played.send({ do: 'choose-exercise', exercise: 1 }).wait(60);
    played
      .send('start')
      .wait(30)
      .send({ do: 'put-down', numbers: { count: 3 } });
    const results = resultsOf(played.state());
    expect(results.map(({ exercise, sets }) => [exercise.name, sets.map((s) => s.count)])).toEqual([
      ['Row', [6]],
      ['Row again', [3]],
    ]);
    expect(results.map(({ exercise }) => exercise.inProgram?.position)).toEqual([0, 1]);
  });

  it('leaves another lift the place of the one whose place it took', () => {
    const by = asPrescribed({ lift: 'chin', name: 'Chin', track: 'chin straight 5-8' });
    const played = play(day).send({ do: 'replace', exercise: 1, by, because: 'other-lift' });
    expect(played.state().exercises[1]?.prescribed).toMatchObject({
      lift: 'chin',
      inProgram: { day: 'A', position: 1, lift: 'row' },
    });
  });
});
