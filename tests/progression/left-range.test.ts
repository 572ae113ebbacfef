import { describe, expect, it } from 'vitest';
import { ANY_RESERVE } from '../../src/progression/own-table.ts';
import type { Result } from '../../src/progression/past.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import { aGear } from './a-gear.ts';
import { aPast, aResult, TODAY, type Trained } from './a-past.ts';
import { aDay, aProgram, straight } from './a-program.ts';
import { tellOf } from './next-time.ts';

const heavy = straight({ range: [5, 8] });
const light = straight({ range: [10, 12] });

/** The same session as a row of a table of the lifter's own. */
function told(trained: Omit<Trained, 'move'>): Result {
  const result = aResult(heavy, { ...trained, move: 'start' });
  const track = `row straight ${Math.min(...trained.reps)}-${Math.max(...trained.reps)}`;
  return { ...result, exercise: { ...result.exercise, reserve: ANY_RESERVE, track } };
}

const heavyToday = (results: readonly Result[], only = aProgram([heavy])) =>
  tellOf(prescribeExercise(only, heavy, aPast(results), { today: TODAY, gear: aGear() }));

const weeks = (from: number, to: number, each: (daysAgo: number) => Result) =>
  Array.from({ length: from - to + 1 }, (_, at) => each(7 * (from - at)));

describe('a range that was left for another', () => {
  it('begins at what the lift showed since, and says so', () => {
    // 80 kg × 11 with one left are 12 to failure, 112 kg by Epley; 6.5 with 1.5 left are 8 to failure
    // by Brzycki: 90.2 kg, of which 95 % are 85.7.
    const next = heavyToday([
      ...[147, 144, 141].map((daysAgo) =>
        aResult(heavy, { kg: 140, reps: [6, 6, 6], rir: 1, daysAgo }),
      ),
      ...weeks(19, 1, (daysAgo) => aResult(light, { kg: 80, reps: [11, 11, 10], rir: 1, daysAgo })),
    ]);
    expect(next).toMatchObject({ move: 'start', kg: 85, aims: [6, 6, 6] });
    expect(next.words).toEqual([
      '140 kg in this range was last done on Tue 7 Jul 2026. 11 reps at 80 kg since then point to less: begin at 85 kg.',
    ]);
  });

  it.each([
    ['light sets under the range', 60, [4, 4, 3], 50],
    ['light triples', 70, [3, 3, 3], 55],
    ['many reps', 75, [12, 12, 12], 80],
  ])('brings no old load back after %s in a table', (_, kg, reps, begin) => {
    const next = heavyToday([
      told({ kg: 100, reps: [5, 5, 5], daysAgo: 36 }),
      told({ kg, reps, daysAgo: 5 }),
      told({ kg, reps, daysAgo: 2 }),
    ]);
    expect(next).toMatchObject({ move: 'start', kg: begin });
  });

  it('is taken by the best set of the latest sessions, warm-ups and one bad day aside', () => {
    const next = heavyToday([
      told({ kg: 140, reps: [5, 5, 5], daysAgo: 36 }),
      told({ kg: [40, 100], reps: [3, 3], daysAgo: 9 }),
      told({ kg: [40, 80], reps: [3, 2], daysAgo: 2 }),
    ]);
    expect(next).toMatchObject({ move: 'start', kg: 80 });
  });

  it('loses no set, and is not said to keep its load, where the lift slips', () => {
    const next = heavyToday([
      told({ kg: 140, reps: [5, 5, 5], daysAgo: 38 }),
      ...[29, 22, 15, 8, 1].map((daysAgo) => told({ kg: 90, reps: [12, 12, 12], daysAgo })),
    ]);
    expect(next).toMatchObject({ kg: 95, rules: ['start-range-again'] });
    expect(next.aims).toHaveLength(3);
  });

  it('is lighter still where the lift was away, too', () => {
    const results = [
      aResult(heavy, { kg: 140, reps: [6, 6, 6], rir: 1, daysAgo: 200 }),
      aResult(light, { kg: 80, reps: [11, 11, 11], rir: 1, daysAgo: 40 }),
    ];
    const next = heavyToday(results);
    expect(next).toMatchObject({ move: 'start', kg: 75 });
    expect(next.aims).toHaveLength(2);
    expect(next.prescribed.reserve).toEqual([2, 3]);
    expect(next.words[0]).toContain('and 40 days without this lift to less still: begin at 75 kg.');
  });

  it('asks after pain with a load that was not left behind', () => {
    const next = heavyToday([
      aResult(heavy, { kg: 140, reps: [6, 6, 6], rir: 1, daysAgo: 60, pain: true }),
      aResult(light, { kg: 80, reps: [11, 11, 11], rir: 1, daysAgo: 3 }),
    ]);
    expect(next.rules).toContain('pain-asked');
    expect(next.kg).toBe(67.5);
  });
});

describe('a range keeps its load', () => {
  const at100 = aResult(heavy, { kg: 100, reps: [6, 6, 6], rir: 1, daysAgo: 40 });

  it('where what the lift showed since still gives it', () => {
    const results = [at100, aResult(light, { kg: 85, reps: [11, 11, 11], rir: 1, daysAgo: 3 })];
    expect(heavyToday(results)).toMatchObject({ move: 'hold', kg: 100 });
  });

  it('beside much lighter sets in the same weeks', () => {
    const results = weeks(8, 1, (daysAgo) =>
      aResult(heavy, { kg: 100, reps: [6, 6, 6], rir: 1, daysAgo }),
    ).concat(
      weeks(8, 1, (daysAgo) =>
        aResult(light, { kg: 50, reps: [10, 10, 10], rir: 1, daysAgo: daysAgo - 3 }),
      ),
    );
    expect(heavyToday(results)).toMatchObject({ move: 'hold', kg: 100 });
  });

  it('where its weekly turn was skipped once', () => {
    const both = aProgram([], {
      daysPerWeek: 2,
      days: [aDay('A', heavy), aDay('B', light)],
    });
    const results = [
      aResult(heavy, { kg: 100, reps: [6, 6, 6], rir: 1, daysAgo: 16 }),
      aResult(light, { kg: 50, reps: [10, 10, 10], rir: 1, daysAgo: 3 }),
    ];
    expect(heavyToday(results, both)).toMatchObject({ move: 'hold', kg: 100 });
  });

  it('after lighter weeks, and after sessions that light gear held down', () => {
    const since = { kg: 40, reps: [10, 10, 10], rir: 2, daysAgo: 3 };
    for (const aside of [{ lighter: true }, { why: ['gear-light'] }]) {
      const results = [at100, aResult(light, { ...since, ...aside })];
      expect(heavyToday(results)).toMatchObject({ move: 'hold', kg: 100 });
    }
  });
});
