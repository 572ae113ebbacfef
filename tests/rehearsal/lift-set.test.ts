import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ableReps,
  ableSeconds,
  afterReps,
  afterRest,
  liftMini,
  liftSet,
  RESTED,
} from '../../src/rehearsal/lift-set.ts';
import { LIFTER_MODEL } from '../../src/rehearsal/lifter-model.ts';

const asked = { aim: 6, range: [5, 8], reserve: [1, 2] } as const;

describe('a set as a lifter does it', () => {
  it.each([
    ['the aim, where it leaves what is wanted', 8.2, 0, 6, 2],
    ['more, where more than the wanted reserve is left', 9.4, 0, 7, 2],
    ['no more than the range holds', 14, 0, 8, 6],
    ['fewer, where the reserve would be eaten into', 6.3, 0, 5, 1],
    ['the low end, at the cost of the reserve', 5.4, 0, 5, 0],
    ['what is there', 3.2, 0, 3, 0],
    ['too few, believing in fewer reps than there are', 8.2, -2, 5, 1],
    ['to failure, believing in more', 6.1, 3, 6, 3],
  ])('is %s', (_, left, felt, reps, reserve) => {
    expect(liftSet(left, felt, asked)).toEqual({ reps, reserve });
  });

  it('is never more than can be lifted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (left, felt) => {
          const { reps, reserve } = liftSet(left, felt, asked);
          expect(reps).toBeLessThanOrEqual(left);
          expect(Number.isInteger(reps) && Number.isInteger(reserve)).toBe(true);
          expect(reserve).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('a cluster', () => {
  // Common practice, and the set clock's rule: mini-sets are about a third of the lead.
  it('of 14 with one left gives mini-sets of three to five after 10 s each', () => {
    let tired = RESTED;
    const reps: number[] = [];
    const lead = ableReps(10, 15.5, tired, LIFTER_MODEL);
    expect(Math.floor(lead.left)).toBe(16);
    tired = afterReps(tired, LIFTER_MODEL, lead, 15);
    for (let mini = 0; mini < 4; mini += 1) {
      tired = afterRest(tired, LIFTER_MODEL, 10);
      const able = ableReps(10, 15.5, tired, LIFTER_MODEL);
      const done = liftMini(able.left, 0, reps[0] ?? null);
      reps.push(done.reps);
      tired = afterReps(tired, LIFTER_MODEL, able, done.reps);
    }
    expect(reps[0]).toBeGreaterThanOrEqual(3);
    for (const mini of reps) expect(mini).toBeLessThanOrEqual(reps[0] ?? 0);
    expect(reps[0]).toBeLessThanOrEqual(5);
  });

  it('spends the reserve rather than end under three', () => {
    expect(liftMini(3.4, 0, null).reps).toBe(3);
    expect(liftMini(2.4, 0, null).reps).toBe(2);
  });
});

describe('what a set costs the next', () => {
  const { setCost } = LIFTER_MODEL;
  const cost = (fresh: number, reps: number, spent = 0) =>
    afterReps({ slow: 0, spent }, LIFTER_MODEL, { fresh, left: fresh * (1 - spent) }, reps).slow;

  it('is that of a set to failure, also of a single, and no more however many mini-sets come after', () => {
    expect([cost(10, 10), cost(1, 1), cost(1.4, 1), cost(15, 15, 0.5)]).toEqual(
      Array(4).fill(setCost),
    );
  });

  it('is nothing far from failure; of reps that are done with a fifth spent all count', () => {
    // Past 60 % of 15 are six.
    expect([cost(15, 5), cost(15, 5, 0.2)]).toEqual([0, 0]);
    expect(cost(15, 2, 0.21)).toBeCloseTo((setCost * 2) / 6, 12);
  });

  it('is nothing where nothing is lifted, of a load far above what can be', () => {
    const able = ableReps(200, 100, RESTED, LIFTER_MODEL);
    expect(able).toEqual({ fresh: 0, left: 0 });
    expect(afterReps(RESTED, LIFTER_MODEL, able, 0)).toEqual({ slow: 0, spent: 1 });
  });
});

it('a hold with as much again on the body lasts half as long, and with help four times as long at most', () => {
  expect([80, 0, -40, -60, -70].map((load) => ableSeconds(60, load, 80))).toEqual([
    30, 60, 120, 240, 240,
  ]);
});

it('three sets of a heavy lift with full rests lose about a rep each', () => {
  let tired = RESTED;
  const able = [0, 1, 2].map(() => {
    const each = ableReps(80, 100, tired, LIFTER_MODEL);
    tired = afterRest(
      afterReps(tired, LIFTER_MODEL, each, Math.floor(each.left)),
      LIFTER_MODEL,
      240,
    );
    return each.left;
  });
  // 36 × (1 − 0.80) + 1 = 8.2 reps to failure at 80 % (Brzycki 1993).
  expect(able[0]).toBeCloseTo(8.2, 6);
  expect((able[0] ?? 0) - (able[2] ?? 0)).toBeGreaterThan(0.8);
  expect((able[0] ?? 0) - (able[2] ?? 0)).toBeLessThan(3);
});
