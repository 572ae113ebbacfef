import { describe, expect, it } from 'vitest';
import { review } from '../../src/cut/review.ts';
import { judgedWork, weeksOfWork, workDone } from '../../src/cut/work-done.ts';
import { day, LIFTS, madePast, madeProgram, madeResult } from './made.ts';

const MONDAY = '2026-09-07';
const bench = (on: string, counts: readonly number[], reserve: number | null = 1) =>
  madeResult({ lift: LIFTS.bench, on, load: 80, counts, reserve });
const week = (results: Parameters<typeof madePast>[0]) =>
  workDone(madePast(results), day(MONDAY), day('2026-09-13'), 3);

describe('the work of a week', () => {
  it('counts direct sets whole and indirect ones half', () => {
    // Pelland 2024, fractional counting: four sets of bench are 4 for the chest and 2 for the triceps.
    const { hardSets } = week([bench(MONDAY, [8, 8, 7, 6])]);
    expect(hardSets.get('chest')).toBe(4);
    expect(hardSets.get('triceps')).toBe(2);
    expect(hardSets.has('quads')).toBe(false);
  });

  it('counts sets that end near failure, and those without a word on effort as asked for', () => {
    expect(week([bench(MONDAY, [8, 8], 4)]).hardSets.get('chest')).toBe(2);
    expect(week([bench(MONDAY, [8, 8], 5)]).hardSets.has('chest')).toBe(false);
    expect(week([bench(MONDAY, [8, 8], null)]).hardSets.get('chest')).toBe(2);
  });

  it('counts a timed hold from the low end of its range on', () => {
    const plank = madeResult({
      lift: LIFTS.plank,
      on: MONDAY,
      load: 0,
      counts: [45, 29],
      range: [30, 60],
    });
    expect(week([plank]).hardSets.get('abs')).toBe(1);
  });

  it('counts a cluster by its hard reps, and tells them', () => {
    // Training rules, section 2: the 60 % rule. 15 to failure: reps 10–15 are six; minis 5, 4: nine more.
    const raise = madeResult({
      lift: LIFTS.raise,
      on: MONDAY,
      load: 8,
      counts: [15, 5, 4],
      reserve: 0,
      style: 'cluster',
      range: [12, 15],
    });
    const work = week([raise]);
    expect(work.clusterReps).toBe(15);
    expect(work.hardSets.get('side-delts')).toBe(2.5);
  });

  it('is asked for of every week that is begun', () => {
    const planned = (to: string) => workDone(madePast([]), day(MONDAY), day(to), 3).planned;
    expect(['2026-09-13', '2026-09-14', '2026-09-20', '2026-09-21'].map(planned)).toEqual([
      3, 6, 6, 9,
    ]);
  });

  it('tells on how many days a muscle was trained: an indirect set alone is no day', () => {
    const { days } = week([
      bench(MONDAY, [8, 8]),
      bench('2026-09-09', [8]),
      madeResult({ lift: LIFTS.pullUp, on: '2026-09-11', load: 0, counts: [8] }),
    ]);
    expect(days.get('chest')).toBe(2);
    expect(days.get('triceps')).toBe(1);
    expect(days.get('biceps')).toBe(0);
  });

  it('takes the mean of what was rated', () => {
    const { meanReserve } = week([
      bench(MONDAY, [8, 8], 2),
      bench('2026-09-09', [8, 8], 1),
      bench('2026-09-11', [5], null),
    ]);
    expect(meanReserve).toBe(1.5);
    expect(week([bench(MONDAY, [8], null)]).meanReserve).toBeNull();
  });
});

describe('calendar weeks', () => {
  it('run from Monday to Sunday, and end with the present one', () => {
    const past = madePast([
      bench(MONDAY, [8]),
      bench('2026-09-13', [8, 8]),
      bench('2026-09-14', [8, 8, 8]),
    ]);
    const weeks = weeksOfWork(past, day('2026-09-16'), 3, 2);
    expect(weeks.map(({ from, to }) => `${from} ${to}`)).toEqual([
      '2026-08-31 2026-09-06',
      '2026-09-07 2026-09-13',
      '2026-09-14 2026-09-20',
    ]);
    expect(weeks.map(({ hardSets }) => hardSets.get('chest') ?? 0)).toEqual([0, 3, 3]);
    expect(weeks.map(({ sessions }) => sessions)).toEqual([0, 2, 1]);
  });

  it('are judged by what the program asked for then, and not by what it asks for since', () => {
    const made = madePast([
      bench('2026-08-31', [8]),
      bench('2026-09-08', [8]),
      bench('2026-09-15', [8]),
    ]);
    const asked = [4, 4, 2];
    const sessions = made.sessions.map((session, at) => ({
      ...session,
      daysPerWeek: asked[at] ?? 0,
    }));
    const weeks = weeksOfWork({ ...made, sessions }, day('2026-09-16'), 4, 2);
    // Before the first session nothing was kept: the program of now.
    expect(weeks.map(({ planned }) => planned)).toEqual([2, 4, 4, 2]);
    const changedToday = weeksOfWork(
      { ...made, sessions: sessions.slice(0, 2) },
      day('2026-09-16'),
      3,
      7,
    );
    expect(changedToday.map(({ planned }) => planned)).toEqual([4, 4, 4]);
  });
});

it('a week that was begun on its Friday was not missed on its Monday', () => {
  const planned = (on: string) =>
    review(
      {
        program: madeProgram([]),
        past: madePast([bench(on, [8, 8, 8])]),
        weighIns: [],
        today: day('2026-09-18'),
        weightAdvice: false,
      },
      4,
    ).weeks.map((each) => `${each.sessions} of ${each.planned}`);
  expect(planned('2026-09-11')).toEqual(['1 of 1', '0 of 3']);
  expect(planned(MONDAY)).toEqual(['1 of 3', '0 of 3']);
});

describe('the work that is judged', () => {
  /** Sessions on these days of September, three of them asked for in a week: what is judged on another. */
  const judged = (on: number, ...trained: readonly number[]) => {
    const date = (of: number) => `2026-09-${String(of).padStart(2, '0')}`;
    const past = madePast(trained.map((of) => bench(date(of), [8, 8, 8])));
    const { from, to, fullOn, sessions } = judgedWork(past, past.sessions, day(date(on)), 3);
    return [from.day, to.day, sessions, fullOn?.day ?? null];
  };
  const two = [7, 9, 11, 14, 16, 18];

  it('is that of the last two full weeks, Monday to Sunday', () => {
    expect(judged(21, ...two)).toEqual([7, 20, 6, null]);
    expect(judged(26, ...two, 21, 23)).toEqual([7, 20, 6, null]);
  });

  it('takes the present week in as soon as all of it is done', () => {
    expect(judged(25, ...two, 21, 23, 25)).toEqual([14, 27, 6, null]);
  });

  it('takes it in on its Sunday, too, where two sessions are missing: one can still be done', () => {
    expect(judged(27, ...two, 21, 23)).toEqual([7, 20, 6, null]);
    expect(judged(27, ...two, 21)).toEqual([14, 27, 4, null]);
    expect(judged(26, ...two, 21)).toEqual([7, 20, 6, null]);
  });

  it('leaves out a first week that was begun late and not done whole', () => {
    expect(judged(21, 9, 11, 14, 16, 18)).toEqual([8, 21, 5, 27]);
    expect(judged(28, 9, 11, 14, 16, 18, 21, 23, 25)).toEqual([14, 27, 6, null]);
    expect(judged(21, 8, 10, 12, 14, 16, 18)).toEqual([7, 20, 6, null]);
  });

  it('is that of the last fourteen days before there are two full weeks, and says when there will be', () => {
    expect(judged(16, 7, 9, 11, 14, 16)).toEqual([3, 16, 5, 20]);
    expect(judged(8, 7)).toEqual([26, 8, 1, 20]);
  });
});
