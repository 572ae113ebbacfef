import { describe, expect, it } from 'vitest';
import { slipOf, slipTogether } from '../../src/progression/slipping.ts';
import { aPast, aResult, TODAY, type Trained } from './a-past.ts';
import { aLift, plank, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const row = straight();

function slip(sessions: readonly Trained[], exercise = row) {
  const past = aPast(sessions.map((each) => aResult(exercise, each)));
  return slipOf(past, exercise.lift.key, TODAY);
}

/** Sessions of three sets three days apart, the last three days ago: so many good ones, then so many at other reps. */
const weakened = (good: number, weak: number, reps: readonly number[] = [5, 5, 4]) =>
  Array.from({ length: good + weak }, (_, at): Trained => {
    const counts = at < good ? [8, 8, 7] : reps;
    return { kg: 100, reps: counts, rir: 1, daysAgo: 3 * (good + weak - at) };
  });

describe('slipping', () => {
  it('is a loss over 2 % that is hardly luck, told with its odds', () => {
    // Three reps fewer at one load, 9 and 6 to failure: 28 ÷ 31 by Brzycki's line, 9.7 %.
    const found = slip(weakened(8, 10));
    expect(found?.odds).toBeGreaterThan(0.9);
    expect(found?.by).toBeGreaterThan(0.02);
    expect(found?.by).toBeLessThan(0.11);
  });

  it('is not one bad day, nor the same reps for weeks', () => {
    expect(slip(weakened(12, 1))).toBeNull();
    expect(slip(weakened(15, 0))).toBeNull();
  });

  it('sees a slow loss of 1 % a session, which never shows between neighbours', () => {
    const slow = Array.from({ length: 14 }, (_, at): Trained => {
      return { kg: 100 * 0.99 ** at, reps: [6, 6, 6], rir: 1, daysAgo: 3 * (14 - at) };
    });
    expect(slip(slow)).not.toBeNull();
  });

  it('is not two reps more at the same load, though the first was called 5 in reserve', () => {
    const rated = weakened(0, 10, [8, 8, 8]).map((each, at) =>
      at < 5 ? { ...each, reps: [6, 6, 6], rir: 5 } : each,
    );
    expect(slip(rated)).toBeNull();
  });

  it('is not a light day of 12 beside a heavy day of 5', () => {
    const light = straight({ range: [10, 15] });
    const results = Array.from({ length: 10 }, (_, at) => 30 - 3 * at).flatMap((daysAgo) => [
      aResult(row, { kg: 80, reps: [5, 5, 5], rir: 1, daysAgo: daysAgo + 1 }),
      aResult(light, { kg: 60, reps: [12, 12, 11], rir: 1, daysAgo }),
    ]);
    expect(slipOf(aPast(results), row.lift.key, TODAY)).toBeNull();
  });

  it('is not judged on fewer than four counted sessions', () => {
    expect(slip(weakened(1, 2, [2, 2, 2]))).toBeNull();
  });

  it.each([
    ['a first session', { move: 'start' }],
    ['a return', { move: 'return' }],
    ['a lighter week', { lighter: true }],
    ['pain', { pain: true }],
  ] as const)('does not count %s', (_, change) => {
    const sessions = weakened(8, 10);
    expect(slip(sessions)).not.toBeNull();
    expect(slip(sessions.map((each, at) => (at >= 8 ? { ...each, ...change } : each)))).toBeNull();
  });

  it('looks back 56 days', () => {
    const old = weakened(8, 0).map((each) => ({ ...each, daysAgo: each.daysAgo + 90 }));
    expect(slip([...old, ...weakened(0, 12)])).toBeNull();
  });

  it('of a timed hold counts five seconds as a rep', () => {
    const hold = straight({ lift: plank, range: [30, 60] });
    const held = (late: number) =>
      Array.from({ length: 16 }, (_, at): Trained => {
        const seconds = at < 8 ? 60 : late;
        return { kg: 0, reps: [seconds, seconds], daysAgo: 3 * (16 - at) };
      });
    expect(slip(held(40), hold)).not.toBeNull();
    expect(slip(held(58), hold)).toBeNull();
  });

  it('of all lifts together shows where none shows it alone', () => {
    const keys = ['row', 'squat', 'press', 'hinge', 'lunge'];
    const results = keys.flatMap((key) =>
      weakened(8, 10, [6, 6, 5]).map((each) => aResult(straight({ lift: aLift({ key }) }), each)),
    );
    const past = aPast(results);
    expect(slipTogether(past, new Set(keys), TODAY)).not.toBeNull();
    const [alone] = keys.map((key) =>
      slipOf(aPast(results.filter(({ exercise }) => exercise.lift === key)), key, TODAY),
    );
    expect(alone).toBeNull();
    // Three are lifts together, two are not.
    const [one, two, three] = keys as [string, string, string];
    const clear = aPast(
      keys.flatMap((key) =>
        weakened(8, 10).map((each) => aResult(straight({ lift: aLift({ key }) }), each)),
      ),
    );
    expect(slipTogether(clear, new Set([one, two, three]), TODAY)).not.toBeNull();
    expect(slipTogether(clear, new Set([one, two]), TODAY)).toBeNull();
  });
});

describe('slipping, by the aim', () => {
  const sessions = weakened(8, 8, [5, 4, 4]);

  it('drops a set and keeps the load in a cut', () => {
    const next = nextTime(row, sessions);
    expect(next).toMatchObject({ move: 'hold', kg: 100 });
    expect(next.aims).toHaveLength(2);
    expect(next.rules).toEqual(expect.arrayContaining(['slipping-cut', 'one-set-fewer']));
    expect(next.rules).not.toContain('holding-wins');
    expect(next.words.join(' ')).toMatch(
      /(Likely|Very likely|Almost surely).* more than 2 % of strength were lost in eight weeks, about \d+ %/i,
    );
  });

  it.each(['maintain', 'build'] as const)('is only said under the aim %s', (aim) => {
    const next = nextTime(row, sessions, { program: { aim } });
    expect(next.aims).toHaveLength(3);
    expect(next.rules).toContain(`slipping-${aim}`);
  });

  it('drops nothing where the muscles are at their floor, and says so', () => {
    const next = nextTime(row, sessions, { program: { daysPerWeek: 1 } });
    expect(next.aims).toHaveLength(3);
    expect(next).toMatchObject({ move: 'hold', kg: 100 });
    expect(next.rules).toContain('volume-at-floor');
  });
});
