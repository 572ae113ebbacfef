import { describe, expect, it } from 'vitest';
import { boutsOf } from '../../src/progression/bout.ts';
import { slipOf } from '../../src/progression/slipping.ts';
import { trackOf } from '../../src/progression/track.ts';
import { aPast, aResult, TODAY, type Trained } from './a-past.ts';
import { plank, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const row = straight();

function slip(sessions: readonly Trained[], exercise = row) {
  const past = aPast(sessions.map((each) => aResult(exercise, each)));
  return slipOf(boutsOf(past, trackOf(exercise)), past.bodyMassOn, TODAY);
}

/** Sessions of one set three days apart, the last three days ago. */
const sets = (...each: readonly (readonly [kg: number, reps: number, rir: number | null])[]) =>
  each.map(([kg, reps, rir], at): Trained => {
    return { kg, reps: [reps], rir: [rir], daysAgo: 3 * (each.length - at) };
  });

describe('slipping', () => {
  it('is both of the last two sessions more than 5 % under the median of the three best', () => {
    // 100 × 8 with one left is 128.6 kg; 100 × 6 is 120.0, 6.7 % less.
    const good = [
      [100, 8, 1],
      [100, 8, 1],
      [100, 8, 1],
    ] as const;
    const found = slip(sets(...good, [100, 6, 1], [100, 6, 1]));
    expect(found?.by).toBeCloseTo(1 - 120 / 128.57, 3);
    expect(slip(sets(...good, [100, 6, 1], [100, 7, 1]))).toBeNull();
    expect(slip(sets(...good, [100, 7, 1], [100, 6, 1]))).toBeNull();
  });

  it('sees a slow loss of 1.65 % a session, which never shows between neighbours', () => {
    const slow = Array.from({ length: 12 }, (_, at) => [100 * 0.9835 ** at, 6, 1] as const);
    expect(slip(sets(...slow))).not.toBeNull();
  });

  it('is not two reps more at the same load, though the first was called 5 in reserve', () => {
    // 80 × 6 called 5 would be 109.3 kg; 80 × 8 with one left is 102.9.
    const rated = [
      [80, 6, 5],
      [80, 6, 5],
      [80, 6, 5],
    ] as const;
    expect(slip(sets(...rated, [80, 8, 1], [80, 8, 1]))).toBeNull();
  });

  it('never is when load and first reps equal a session of the reference', () => {
    const [easy, hard] = [
      [80, 8, 3],
      [80, 8, 0],
    ] as const;
    expect(slip(sets(easy, easy, easy, hard, hard))).toBeNull();
  });

  it('compares a track with itself: a light day of 12 is not a heavy day of 5 gone wrong', () => {
    const light = straight({ range: [10, 15] });
    const results = [15, 12, 9, 6, 3].flatMap((daysAgo) => [
      aResult(row, { kg: 80, reps: [5], rir: 1, daysAgo: daysAgo + 1 }),
      aResult(light, { kg: 60, reps: [12], rir: 1, daysAgo }),
    ]);
    const past = aPast(results);
    for (const exercise of [row, light]) {
      expect(slipOf(boutsOf(past, trackOf(exercise)), past.bodyMassOn, TODAY)).toBeNull();
    }
  });

  it('judges clusters by their lead, also above 15 reps', () => {
    const good = [
      [10, 15, 1],
      [10, 15, 1],
      [10, 15, 1],
    ] as const;
    expect(slip(sets(...good, [10, 12, 1], [10, 12, 1]))).not.toBeNull();
  });

  it('is not judged on fewer than five counted sessions', () => {
    expect(slip(sets([100, 8, 1], [100, 8, 1], [100, 5, 1], [100, 5, 1]))).toBeNull();
  });

  it.each([
    ['a first session', { move: 'start' }],
    ['a return', { move: 'return' }],
    ['a lighter week', { lighter: true }],
    ['pain', { pain: true }],
  ] as const)('does not count %s', (_, change) => {
    const sessions = sets([100, 8, 1], [100, 8, 1], [100, 8, 1], [100, 5, 1], [100, 5, 1]);
    expect(slip(sessions)).not.toBeNull();
    expect(slip(sessions.map((each, at) => (at === 4 ? { ...each, ...change } : each)))).toBeNull();
  });

  it('looks back 56 days', () => {
    const old = [70, 67, 64].map((daysAgo) => ({ kg: 100, reps: [8], rir: 1, daysAgo }));
    const now = [12, 9, 6, 3].map((daysAgo) => ({ kg: 100, reps: [6], rir: 1, daysAgo }));
    expect(slip([...old, ...now])).toBeNull();
  });

  it('of a timed hold is 20 % under the median of the three best', () => {
    const hold = straight({ lift: plank, range: [30, 60] });
    const held = (...seconds: readonly number[]) =>
      sets(...seconds.map((s) => [0, s, null] as const));
    expect(slip(held(60, 60, 60, 47, 47), hold)).not.toBeNull();
    expect(slip(held(60, 60, 60, 49, 49), hold)).toBeNull();
  });
});

describe('slipping, by the aim', () => {
  const sessions = [15, 12, 9, 6, 3].map((daysAgo) => {
    const reps = daysAgo > 6 ? [8, 8, 7] : [6, 6, 6];
    return { kg: 100, reps, rir: 1, daysAgo };
  });

  it('drops a set and keeps the load in a cut', () => {
    const next = nextTime(row, sessions);
    expect(next).toMatchObject({ move: 'hold', kg: 100 });
    expect(next.aims).toHaveLength(2);
    expect(next.rules).toEqual(expect.arrayContaining(['slipping-cut', 'one-set-fewer']));
    expect(next.rules).not.toContain('holding-wins');
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
