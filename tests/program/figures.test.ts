import { describe, expect, test } from 'vitest';
import { programFigures } from '../../src/program/check/figures.ts';
import { plan, programOf } from './check-report.ts';

const figures = (text: string) => programFigures(programOf(text));

function week(text: string): Readonly<Record<string, number>> {
  return Object.fromEntries(
    figures(text)
      .muscles.filter(({ hardSets }) => hardSets > 0)
      .map(({ muscle, hardSets }) => [muscle, hardSets]),
  );
}

describe('hard sets a muscle a week', () => {
  // Pelland 2024, fractional counting (printed): bench press 4 sets and triceps extension 3 sets
  // make chest 4, triceps 5.0.
  test('four sets of the bench press and three of the triceps extension', () => {
    const text = plan(
      { A: ['lift: bench-press, sets: 4, reps: 6', 'lift: triceps-extension, sets: 3, reps: 10'] },
      'days_per_week: 1',
    );
    expect(week(text)).toMatchObject({ chest: 4, triceps: 5 });
  });

  test('sets that are left far from failure are none', () => {
    const left = (reserve: string) =>
      week(
        plan({ A: [`lift: leg-curl, sets: 4, reps: 10, reserve: ${reserve}`] }, 'days_per_week: 1'),
      );
    expect(left('4-5').hamstrings).toBe(4);
    expect(left('5').hamstrings).toBeUndefined();
  });

  test('two days that rotate over three days a week come up one and a half times each', () => {
    const text = plan({
      A: ['lift: leg-extension, sets: 2, reps: 10'],
      B: ['lift: leg-curl, sets: 4, reps: 10'],
    });
    expect(week(text)).toEqual({ quads: 3, hamstrings: 6 });
  });

  // Planned cluster (ours): lead 13 to failure has 13 − ⌊0.6 × 13⌋ = 6 hard reps, four
  // mini-sets of ⌊13 ÷ 3⌋ = 4 make 22 in all; 22 ÷ 6 is 3.5 to the nearest half.
  test('a cluster of 12–15 and five sets counts three and a half', () => {
    const text = plan(
      { A: ['lift: dumbbell-side-raise, cluster: { lead: 12-15 }'] },
      'days_per_week: 1',
    );
    expect(week(text)).toEqual({ 'side-delts': 3.5 });
  });

  test('sets that stop five reps from failure are not hard sets', () => {
    const text = plan({ A: ['lift: leg-curl, sets: 3, reps: 10, reserve: 5'] });
    expect(week(text)).toEqual({});
  });

  test('a hold counts one hard set each', () => {
    expect(week(plan({ A: ['lift: plank, sets: 2, seconds: 30-60'] }))).toEqual({ abs: 6 });
  });
});

test('days a muscle: those with a hard set for it, and those with a lift for it', () => {
  const { muscles } = figures(
    plan({
      A: ['lift: bench-press, sets: 3, reps: 6'],
      B: ['lift: triceps-extension, sets: 3, reps: 10', 'lift: chin-up, sets: 1, reps: 6'],
      C: ['lift: leg-curl, sets: 3, reps: 10'],
    }),
  );
  const of = (name: string) => muscles.find(({ muscle }) => muscle === name);
  expect(of('triceps')).toMatchObject({ days: 2, directDays: 1 });
  expect(of('upper-back')).toMatchObject({ hardSets: 0.5, days: 0, directDays: 0 });
});

describe('minutes a day', () => {
  // Marshall 2012, J Sci Med Sport 15(2):153–158 (printed): 20 reps at 3 s each; 5 × 4 with 180 s
  // rests = 780 s, with 20 s rests = 140 s.
  test.each([
    ['180 s', 780],
    ['20 s', 140],
  ])('five sets of four with rests of %s', (rest, seconds) => {
    const { days } = figures(
      plan({ A: [`lift: leg-press, sets: 5, reps: 4, rest: ${rest}, warm_up: false`] }),
    );
    expect(days[0]).toMatchObject({ name: 'A', sets: 5, minutes: Math.round(seconds / 60) });
  });

  test('both sides take twice the time', () => {
    const one = 'sets: 10, reps: 20, rest: 1 s, warm_up: false';
    const { days } = figures(
      plan({ A: [`lift: leg-press, ${one}`], B: [`lift: single-leg-press, ${one}`] }),
    );
    expect(days.map(({ minutes }) => minutes)).toEqual([10, 20]);
  });
});
