import { describe, expect, it } from 'vitest';
import type { Exercise } from '../../src/program/program.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import { inUnit, kilograms } from '../../src/training/mass.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, TODAY } from './a-past.ts';
import { aLift, aProgram, cluster, straight } from './a-program.ts';

/** Warm-up sets of each exercise of a day, as `60 × 5`. */
function warmUps(...exercises: readonly Exercise[]): readonly (readonly string[])[] {
  const program = aProgram(exercises);
  const [day] = program.days;
  if (!day) throw new Error('A day is missing.');
  const gear = aGear({ dumbbells: dumbbells(4, 8) });
  const { exercises: prescribed } = prescribe(program, day, aPast([]), { today: TODAY, gear });
  return prescribed.map(({ warmUp }) =>
    warmUp.map(({ load, reps }) => `${inUnit(load, 'kg')} × ${reps}`),
  );
}

const row = straight({ start: kilograms(100) });
const squat = straight({
  lift: aLift({ key: 'squat', trains: { quads: 1, glutes: 1 } }),
  start: kilograms(100),
});
const pulldown = straight({
  lift: aLift({ key: 'pulldown', trains: { lats: 1, biceps: 0.5 } }),
  start: kilograms(60),
});

describe('warm-up sets', () => {
  it('are a whole ramp for the first exercise of its muscles, one set once they are warm', () => {
    const [first, other, second] = warmUps(row, squat, pulldown);
    expect(first).toEqual(['40 × 8', '60 × 5', '80 × 2']);
    expect(other).toEqual(['40 × 8', '60 × 5', '80 × 2']);
    expect(second).toEqual(['35 × 4']);
  });

  it('need none of the smallest plates, which make a work load exact', () => {
    const kg = (amount: number, count: number) => ({
      stamped: { amount, unit: 'kg' as const },
      count,
    });
    const own = aGear();
    const gear = { ...own, plates: [...own.plates, kg(0.5, 2), kg(0.25, 2)] };
    const exercise = straight({ start: kilograms(103.5) });
    const program = aProgram([exercise]);
    const [day] = program.days;
    const [made] = prescribe(program, day!, aPast([]), { today: TODAY, gear }).exercises;
    expect(made?.load).toBe(kilograms(103.5));
    // 40 % are 41.4, 60 % 62.1 and 80 % 82.8 kg.
    expect(made?.warmUp.map(({ load }) => inUnit(load, 'kg'))).toEqual([40, 60, 80]);
  });

  it('are one light set before a cluster', () => {
    expect(warmUps(cluster({ start: kilograms(8) }))).toEqual([['4 × 8']]);
  });

  it('are loaded from what the lift before left on the bar, whatever was done without a load between', () => {
    const hang = straight({ lift: aLift({ key: 'hang', trains: { calves: 1 } }) });
    const light = { ...row, start: kilograms(62.5) };
    const heavy = { ...squat, start: kilograms(157.5) };
    expect(warmUps(heavy).at(-1)).toEqual(['60 × 8', '90 × 5', '120 × 2']);
    // The plates of 62.5 kg are on it already.
    const loaded = ['62.5 × 8', '90 × 5', '120 × 2'];
    expect(warmUps(light, heavy).at(-1)).toEqual(loaded);
    expect(warmUps(light, hang, heavy).at(-1)).toEqual(loaded);
  });

  it('are left out where the program says so, and where no load is known', () => {
    expect(warmUps({ ...row, warmUp: false })).toEqual([[]]);
    expect(warmUps(straight())).toEqual([[]]);
  });
});
