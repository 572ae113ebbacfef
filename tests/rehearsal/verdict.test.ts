import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { verdictOf } from '../../src/rehearsal/verdict-of.ts';
import type { RehearsedWeek } from '../../src/rehearsal/weeks-of.ts';
import { loadAtRepsToFailure } from '../../src/training/strength.ts';
import { aProgram, straight } from '../progression/a-program.ts';
import { ableLoad } from './made-model.ts';

const program = aProgram([straight()]);

const week = (changes: Partial<RehearsedWeek> = {}): RehearsedWeek => ({
  week: 1,
  from: Temporal.PlainDate.from('2026-01-05'),
  sessions: 3,
  minutes: 60,
  kept: 1,
  bodyMass: null,
  lighter: false,
  tracks: [],
  hardSets: new Map([['lats', 8]]),
  ...changes,
});

const lats = (...weeks: readonly RehearsedWeek[]) =>
  verdictOf(program, weeks).muscles.find(({ muscle }) => muscle === 'lats');

describe('what the weeks of a rehearsal come to', () => {
  test('strength is kept from 97 % of the start on, in the last week', () => {
    const kept = (...shares: number[]) =>
      verdictOf(
        program,
        shares.map((share) => week({ kept: share })),
      );
    expect(kept(0.9, 0.97)).toMatchObject({ kept: 0.97, lowest: 0.9, keepsStrength: true });
    expect(kept(1, 0.969).keepsStrength).toBe(false);
    // The start counts as a week of its own.
    expect(kept(1.02, 1.03).lowest).toBe(1);
  });

  test('a lighter week and one without a session say nothing of the sets of a muscle', () => {
    const light = week({ lighter: true, hardSets: new Map([['lats', 2]]) });
    const away = week({ sessions: 0, minutes: null, hardSets: new Map() });
    expect(lats(week(), light, away, week({ hardSets: new Map([['lats', 7]]) }))).toMatchObject({
      mean: 7.5,
      least: 7,
      most: 8,
    });
    expect(verdictOf(program, [week(), light, away]).lighterWeeks).toBe(1);
    expect(lats(away)).toMatchObject({ mean: 0, least: 0, most: 0 });
  });

  test('a week in which a muscle got nothing counts as one of none', () => {
    expect(lats(week(), week({ hardSets: new Map() }))).toMatchObject({ mean: 4, least: 0 });
  });

  test('minutes are those of weeks with a session', () => {
    const found = verdictOf(program, [
      week({ minutes: 40 }),
      week({ minutes: null, sessions: 0 }),
      week({ minutes: 60 }),
    ]);
    expect([found.minutes, found.longest]).toEqual([50, 60]);
    expect(verdictOf(program, [week({ minutes: 40 })]).minutes).toBe(40);
    expect(verdictOf(program, [])).toMatchObject({ minutes: 0, longest: 0, kept: 1 });
  });

  // The range of a cut is 6 to 10 hard sets a week.
  test.each([
    [5.7, 'too-little'],
    [5.75, 'inside'],
    [6, 'inside'],
    [10.2, 'inside'],
    [10.25, 'too-much'],
  ])('%d sets, to the nearest half, are %s', (sets, judged) => {
    expect(lats(week({ hardSets: new Map([['lats', sets]]) }))?.judged).toBe(judged);
  });
});

test('who tires less does more reps with the load that others do fewer with', () => {
  const usual = { endurance: 1 };
  // Six reps with two left are eight to failure, by the curve that all lifters share.
  expect(ableLoad(100, 6, 2, usual)).toBeCloseTo(loadAtRepsToFailure(100, 8), 9);
  // Twice the endurance: fifteen reps where the curve has eight, the first of them as for everyone.
  expect(ableLoad(100, 13, 2, { endurance: 2 })).toBeCloseTo(loadAtRepsToFailure(100, 8), 9);
  expect(ableLoad(100, 1, 0, { endurance: 2 })).toBeCloseTo(ableLoad(100, 1, 0, usual), 9);
});
