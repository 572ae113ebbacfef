import { describe, expect, it } from 'vitest';
import { recentBests } from '../../src/lifter/drafting.ts';
import { inUnit } from '../../src/training/mass.ts';
import { aPast, aResult, TODAY, type Trained } from '../progression/a-past.ts';
import { aLift, plank, pullUp, straight } from '../progression/a-program.ts';

const row = straight();

/** `80 × 5@1` for each lift that has one. */
const bests = (...done: readonly (readonly [typeof row, Trained])[]) =>
  recentBests(aPast(done.map(([exercise, each]) => aResult(exercise, each))), TODAY).map(
    ({ lift, load, reps, reserve }) => `${lift} ${inUnit(load, 'kg')} × ${reps}@${reserve}`,
  );

const at = (kg: number, daysAgo: number, more: Partial<Trained> = {}): Trained => ({
  kg,
  reps: [5],
  rir: 1,
  daysAgo,
  ...more,
});

describe('recent bests', () => {
  it('are the strongest set of each lift, by load and reps together', () => {
    const eight = at(75, 4, { reps: [8] });
    expect(bests([row, at(80, 3)], [row, eight], [row, at(70, 2)])).toEqual(['row 75 × 8@1']);
  });

  it('are of the last eight weeks', () => {
    expect(bests([row, at(100, 57)], [row, at(80, 56)])).toEqual(['row 80 × 5@1']);
  });

  it('leave out days of pain, lighter weeks and holds', () => {
    const hold = straight({ lift: plank });
    expect(
      bests(
        [row, at(100, 3, { pain: true })],
        [row, at(95, 4, { lighter: true })],
        [row, at(80, 5)],
        [hold, at(0, 3, { reps: [60] })],
      ),
    ).toEqual(['row 80 × 5@1']);
  });

  it('of a body weight lift are those with the most load, or the least help', () => {
    const pull = straight({ lift: pullUp });
    expect(bests([pull, at(-20, 5)], [pull, at(-10, 4)])).toEqual(['pull-up -10 × 5@1']);
    expect(bests([pull, at(0, 5)], [pull, at(10, 4)])).toEqual(['pull-up 10 × 5@1']);
  });

  it('are no set that failed, nor one of more reps than the curve serves to', () => {
    expect(bests([row, at(80, 3, { reps: [0, 40] })])).toEqual([]);
    expect(
      bests([row, at(80, 3)], [straight({ lift: aLift({ key: 'press' }) }), at(50, 3)]),
    ).toEqual(['row 80 × 5@1', 'press 50 × 5@1']);
  });
});
