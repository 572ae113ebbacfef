import { describe, expect, it } from 'vitest';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import { inUnit, kilograms, pounds } from '../../src/training/mass.ts';
import { aGear, dumbbells } from '../progression/a-gear.ts';
import { aPast, aResult, TODAY } from '../progression/a-past.ts';
import { aLift, aProgram, straight } from '../progression/a-program.ts';
import { nextTime } from '../progression/next-time.ts';

/**
 * American College of Sports Medicine, "Progression models in resistance training for healthy
 * adults", Med Sci Sports Exerc 41(3):687–708, 2009: 2–10 % more when the workload can be done for
 * one to two repetitions over the goal.
 */
describe('ACSM 2009: 2–10 % when one or two repetitions over the goal are done', () => {
  const over = (kg: number) => [{ kg, reps: [10, 10, 10], daysAgo: 3 }];

  it('60 kg goes to between 61.2 and 66.0 kg', () => {
    const next = nextTime(straight(), over(60));
    expect(next.move).toBe('up');
    expect(next.kg).toBeGreaterThanOrEqual(61.2);
    expect(next.kg).toBeLessThanOrEqual(66);
  });

  it('20 kg goes to between 20.4 and 22.0 kg, where such dumbbells are owned', () => {
    const gear = aGear({ dumbbells: dumbbells(18, 20, 22, 24) });
    const next = nextTime(straight({ lift: aLift({ loading: 'dumbbell' }) }), over(20), { gear });
    expect(next.move).toBe('up');
    expect(next.kg).toBeGreaterThanOrEqual(20.4);
    expect(next.kg).toBeLessThanOrEqual(22);
  });

  it('2.5 kg on 20 kg are 12.5 %, outside: the top of the range alone does not earn them', () => {
    const gear = aGear({ dumbbells: dumbbells(17.5, 20, 22.5) });
    const press = straight({ lift: aLift({ loading: 'dumbbell' }) });
    const next = nextTime(press, [{ kg: 20, reps: [8, 8, 8], daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'hold', kg: 20 });
    expect(next.rules).toContain('hold-reach-target');
  });
});

/**
 * National Strength and Conditioning Association, *Essentials of Strength Training and
 * Conditioning*, the 2-for-2 rule: two or more repetitions over the goal in the last set in two
 * sessions running → more load. Its example: 3 × 10 at 135 lb, 12 repetitions in the last set twice.
 */
describe('NSCA 2-for-2', () => {
  it('3 × 10 at 135 lb with 12 in the last set twice: more load', () => {
    const lb = (amount: number) => ({ amount, unit: 'lb' as const });
    const gear = aGear({
      unit: 'lb',
      bars: [{ name: 'bar', mass: lb(45), collars: lb(0) }],
      plates: [45, 35, 25, 10, 5, 2.5].map((amount) => ({ stamped: lb(amount), count: 4 })),
    });
    const exercise = straight({ range: [8, 10] });
    const load = pounds(135);
    const results = [6, 3].map((daysAgo) => {
      const result = aResult(exercise, { kg: 0, reps: [10, 10, 12], daysAgo });
      return { ...result, sets: result.sets.map((set) => ({ ...set, load })) };
    });
    const program = aProgram([exercise], { unit: 'lb' });
    const next = prescribeExercise(program, exercise, aPast(results), { today: TODAY, gear });
    expect(next.move).toBe('up');
    expect(next.load).toBeGreaterThan(load);
    expect(inUnit(next.load ?? kilograms(0), 'lb')).toBeLessThanOrEqual(148.5);
  });
});
