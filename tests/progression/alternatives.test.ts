import { describe, expect, it } from 'vitest';
import { alternativesFor, withLift } from '../../src/progression/alternatives.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aLift, aProgram, plank, pullUp, sideRaise, straight } from './a-program.ts';
import { tellOf } from './next-time.ts';

const row = aLift();
const lifts = [
  row,
  aLift({ key: 'one-arm-row', loading: 'dumbbell', hands: 1 }),
  aLift({ key: 'seal-row' }),
  aLift({
    key: 'pulldown',
    loading: 'stack',
    pattern: 'vertical-pull',
    trains: { lats: 1, biceps: 0.5 },
  }),
  aLift({ key: 'long-hold', counts: 'seconds' }),
  aLift({ key: 'kettlebell-row', loading: 'free' }),
  { ...pullUp, needs: ['chin-up bar'] as const },
  sideRaise,
  plank,
];
const catalogue = new Map(lifts.map((lift) => [lift.key, lift]));
const names = (gear = aGear({ dumbbells: dumbbells(20) })) =>
  alternativesFor({ ...row, lift: row.key }, catalogue, gear).map(({ key }) => key);

describe('lifts in the place of a row', () => {
  it('train the same muscles, the most alike first', () => {
    expect(names()).toEqual(['seal-row', 'one-arm-row', 'pull-up', 'kettlebell-row']);
  });

  it('are done on what is there', () => {
    expect(names(aGear({ stations: ['bench'] }))).not.toContain('pull-up');
    expect(names(aGear({ stations: ['chin-up bar'] }))).toContain('pull-up');
  });

  it('with loads that gear does not tell of come last, unless the lift is one itself', () => {
    expect(names().at(-1)).toBe('kettlebell-row');
    const swing = { ...row, lift: 'swing', loading: 'free' as const };
    const [first] = alternativesFor(swing, catalogue, aGear());
    expect(first?.key).toBe('kettlebell-row');
  });

  it('can be loaded with what is owned', () => {
    expect(names(aGear())).not.toContain('one-arm-row');
    const kg = (amount: number) => ({ amount, unit: 'kg' as const });
    const stack = { name: 'pulley', lowest: kg(5), step: kg(5), highest: kg(80) };
    expect(names(aGear({ stacks: [stack] }))).toContain('pulldown');
  });

  it('are weights where one was, and nothing of the body that is no heavier for it', () => {
    const pushed = aLift({ key: 'push-up-row', loading: 'bodyweight', bodyShare: 0.6 });
    const held = aLift({
      key: 'held-row',
      loading: 'dumbbell',
      trains: { ...row.trains, biceps: 1 },
    });
    const both = new Map([pushed, held].map((lift) => [lift.key, lift]));
    const gear = aGear({ dumbbells: dumbbells(20) });
    const [first] = alternativesFor({ ...row, lift: row.key }, both, gear);
    expect(first?.key).toBe('held-row');
  });

  it('take their load from their own results', () => {
    const exercise = straight({ lift: row });
    const seal = withLift(exercise, aLift({ key: 'seal-row' }));
    const past = aPast([
      aResult(exercise, { kg: 100, reps: [6, 6, 6], daysAgo: 3 }),
      aResult(seal, { kg: 60, reps: [8, 8, 8], daysAgo: 10 }),
    ]);
    const next = prescribeExercise(aProgram([exercise]), seal, past, {
      today: TODAY,
      gear: aGear(),
    });
    expect(tellOf(next)).toMatchObject({ move: 'up', kg: 62.5 });
  });
});
