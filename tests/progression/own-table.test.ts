import { describe, expect, it } from 'vitest';
import { strengthOfLifts } from '../../src/progression/lift-strength.ts';
import { ANY_RESERVE } from '../../src/progression/own-table.ts';
import type { Result } from '../../src/progression/past.ts';
import { oneRepMax } from '../../src/training/strength.ts';
import { aPast, aResult, TODAY, type Trained } from './a-past.ts';
import { straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const row = straight();

/** A session as a table brings it in: warm-ups among the sets, nothing asked for, a range of its own. */
function outOfTable(trained: Omit<Trained, 'move'>): Result {
  const result = aResult(row, { ...trained, move: 'start' });
  const track = `row straight ${Math.min(...trained.reps)}-${Math.max(...trained.reps)}`;
  return { ...result, exercise: { ...result.exercise, reserve: ANY_RESERVE, track } };
}

const levelOf = (results: readonly Result[]) =>
  strengthOfLifts(aPast(results), TODAY.subtract({ days: 56 }), TODAY).lifts.get(row.lift.key);

describe('a table of the lifter’s own', () => {
  const days = Array.from({ length: 8 }, (_, at) => 3 * (8 - at));

  it('tells strength, by its work sets and not by its warm-ups', () => {
    const worked = days.map((daysAgo) => outOfTable({ kg: 100, reps: [8, 8], daysAgo }));
    const warmed = days.map((daysAgo) =>
      outOfTable({ kg: [40, 60, 100, 100], reps: [8, 5, 8, 8], daysAgo }),
    );
    const [plain, among] = [levelOf(worked), levelOf(warmed)];
    expect(plain?.sessions).toBe(8);
    expect(among?.level.mean).toBeCloseTo(plain?.level.mean ?? Number.NaN, 9);
    // Unrated sets count as the last rep that could be done; the second is one after the first.
    const max = Math.log(oneRepMax(100e9, 8));
    expect(Math.abs((plain?.level.mean ?? 0) - max)).toBeLessThan(0.03);
  });

  it('is one row of sessions, whatever reps each day had', () => {
    const [first, second] = [
      days.map((daysAgo) => outOfTable({ kg: 100, reps: [8, 8], rir: 1, daysAgo })),
      days.map((daysAgo, at) =>
        outOfTable({ kg: 100, reps: [8, 8, ...(at % 2 ? [7] : [6])], rir: 1, daysAgo }),
      ),
    ];
    const error = levelOf(first)?.level.error ?? 0;
    expect(levelOf(second)?.level.error).toBeLessThan(error * 1.05);
  });

  it('leaves first sessions of a program out, as before', () => {
    expect(levelOf([aResult(row, { kg: 100, reps: [8], daysAgo: 9, move: 'start' })])).toBe(
      undefined,
    );
  });
});

describe('a table in which sets leave the range', () => {
  const next = (...sessions: readonly Omit<Trained, 'move'>[]) =>
    nextTime(row, [], { past: aPast(sessions.map(outOfTable)), program: { aim: 'build' } });

  it('eases a load that fails under the range every time', () => {
    const began = { kg: 90, reps: [6, 6, 6], rir: 1, daysAgo: 21 };
    const missed = (kg: number, daysAgo: number) => ({ kg, reps: [4, 4, 4], rir: 0, daysAgo });
    expect(next(began, missed(90, 14))).toMatchObject({ kg: 90, rules: ['hold-missed'] });
    expect(next(began, missed(90, 14), missed(90, 7))).toMatchObject({
      move: 'ease',
      kg: 85,
      rules: ['ease-missed-twice'],
    });
    expect(next(began, missed(90, 14), missed(90, 7), missed(85, 5), missed(85, 3))).toMatchObject({
      move: 'ease',
      kg: 80,
    });
  });

  it('goes back from a step up that failed', () => {
    const failed = (daysAgo: number) => ({ kg: 92.5, reps: [4, 4, 4], rir: 0, daysAgo });
    const after = next({ kg: 90, reps: [8, 8, 8], rir: 1, daysAgo: 9 }, failed(6), failed(3));
    expect(after).toMatchObject({ move: 'ease', kg: 90, rules: ['ease-back'] });
  });

  it('goes up where more was done than the range asks for', () => {
    const after = next(
      { kg: 90, reps: [6, 6, 6], rir: 1, daysAgo: 6 },
      { kg: 90, reps: [10, 10, 9], rir: 1, daysAgo: 3 },
    );
    expect(after).toMatchObject({ move: 'up', kg: 97.5 });
  });

  it('goes up where every set was well past the range, whatever failed before', () => {
    const rows = [
      [105, [5, 5, 4]],
      [105, [3, 3, 3]],
      [105, [3, 2, 2]],
      [100, [9, 9, 9]],
      [100, [10, 10, 10]],
      [100, [11, 11, 11]],
    ] as const;
    const told = rows.map(([kg, reps], at) => ({ kg, reps, daysAgo: 7 * (rows.length - at) }));
    // 100 kg × 11 to failure leave 9 with one left at 102.5 kg by Epley's line, more than 8.
    expect(next(...told)).toMatchObject({ move: 'up', kg: 102.5 });
  });

  it.each([
    ['light sets of few reps', { kg: 60, reps: [3, 3, 3] }],
    ['light sets of many', { kg: 65, reps: [15, 15] }],
    ['a heavy single', { kg: 105, reps: [1] }],
  ])('leaves out a day of %s', (_, done) => {
    const worked = { kg: 90, reps: [6, 6, 6], rir: 1, daysAgo: 6 };
    const after = next(worked, { ...done, rir: 1, daysAgo: 3 });
    expect(after).toMatchObject({ kg: 90, aims: next(worked).aims });
  });
});
