import { describe, expect, it } from 'vitest';
import { prescribe } from '../../src/progression/prescribe.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aLift, aProgram, straight } from './a-program.ts';

const press = straight({
  lift: aLift({ key: 'press', name: 'Press', loading: 'dumbbell', trains: { chest: 1 } }),
  start: kilograms(20),
});
const bench = straight({
  lift: aLift({ key: 'bench', name: 'Bench', pattern: 'horizontal-push', trains: { chest: 1 } }),
  start: kilograms(60),
});
const hinge = straight({
  lift: aLift({ key: 'hinge', name: 'Hinge', pattern: 'hinge', trains: { hamstrings: 1 } }),
  start: kilograms(60),
});

type Asked = ReturnType<typeof straight>;

/** Done so many times, the last three days ago; the reps of a set that failed by how many days ago. */
const done = (exercise: Asked, times: number, failedAgo: number | null = null) =>
  Array.from({ length: times }, (_, at) => {
    const daysAgo = 3 + 4 * (times - 1 - at);
    const result = aResult(exercise, { kg: 20, reps: [6, 6, 6], rir: 1, daysAgo });
    return failedAgo === daysAgo
      ? { ...result, sets: result.sets.map((set) => ({ ...set, reserve: 0, failed: true })) }
      : result;
  });

function offered(
  exercises: readonly Asked[],
  results: ReturnType<typeof done>,
  safeties = false,
): readonly string[] {
  const program = aProgram([...exercises]);
  const gear = { ...aGear({ dumbbells: dumbbells(18, 20, 22) }), safeties };
  const { exercises: asked } = prescribe(program, program.days[0]!, aPast(results), {
    today: TODAY,
    gear,
  });
  return asked.filter(({ testSet }) => testSet).map(({ lift }) => lift);
}

describe('a test set', () => {
  it('is offered of a lift that was done four times and more', () => {
    expect(offered([press], done(press, 3))).toEqual([]);
    expect(offered([press], done(press, 4))).toEqual(['press']);
  });

  it('is not offered again for some four weeks, nor of another lift in the same week', () => {
    expect(offered([press], done(press, 9, 15))).toEqual([]);
    expect(offered([press], done(press, 9, 27))).toEqual(['press']);
    const other = straight({
      lift: aLift({ key: 'other', name: 'Other', loading: 'dumbbell', trains: { lats: 1 } }),
      start: kilograms(20),
    });
    expect(offered([press, other], [...done(press, 9), ...done(other, 9, 3)])).toEqual([]);
    expect(offered([press, other], [...done(press, 9, 31), ...done(other, 9)])).toEqual(['other']);
  });

  it('is never offered where the bar can pin its lifter, nor of a hinge with a bar', () => {
    expect(offered([bench, hinge], [...done(bench, 6), ...done(hinge, 6)])).toEqual([]);
    expect(offered([bench, hinge], [...done(bench, 6), ...done(hinge, 6)], true)).toEqual([
      'bench',
    ]);
  });
});
