import { describe, expect, it } from 'vitest';
import { LIFTER_MODEL } from '../../src/rehearsal/lifter-model.ts';
import {
  afterSets,
  dayLater,
  givenStrength,
  type MuscleCondition,
  settledCondition,
} from '../../src/rehearsal/muscle-condition.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { varyModel } from '../../src/rehearsal/vary-model.ts';

const untrained: MuscleCondition = { fitness: 0, fatigue: 0, built: [0, 0, 0, 0, 0, 0, 0] };

const daysLater = (condition: MuscleCondition, days: number, loss = 0): MuscleCondition =>
  Array.from({ length: days }).reduce<MuscleCondition>(
    (each) => dayLater(each, LIFTER_MODEL, loss),
    condition,
  );

// Banister 1975, from memory: days 42 and 7, gains 1 and 2; carried over to strength, ours.
describe('fitness and fatigue', () => {
  const trained = afterSets(untrained, LIFTER_MODEL, 4);

  it('of a set are 1 and 2, so strength is lower right after it', () => {
    expect(trained).toMatchObject({ fitness: 4, fatigue: 8 });
    expect(givenStrength(trained)).toBe(-4);
  });

  it('fall to 1/e in 42 and in 7 days', () => {
    expect(daysLater(trained, 42).fitness).toBeCloseTo(4 / Math.E, 9);
    expect(daysLater(trained, 7).fatigue).toBeCloseTo(8 / Math.E, 9);
  });

  // With gains a, b and days A, B the two are equal after ln(b/a) / (1/B − 1/A) days:
  // ln 2 / (1/7 − 1/42) = 5.82.
  it('give more than they take from the sixth day on', () => {
    expect(givenStrength(daysLater(trained, 5))).toBeLessThan(0);
    expect(givenStrength(daysLater(trained, 6))).toBeGreaterThan(0);
  });

  it('keep fatigue longer in a deficit: × (1 + half the loss in % a week)', () => {
    expect(daysLater(trained, 14, 2).fatigue).toBeCloseTo(8 / Math.E, 9);
  });

  it('build no more fitness than ten sets in seven days do, but tire with every set', () => {
    const twice = afterSets(afterSets(untrained, LIFTER_MODEL, 8), LIFTER_MODEL, 8);
    expect(twice).toMatchObject({ fitness: 10, fatigue: 32 });
    const nextWeek = afterSets(daysLater(twice, 7), LIFTER_MODEL, 8);
    expect(nextWeek.fitness).toBeCloseTo(10 * Math.exp(-7 / 42) + 8, 9);
  });

  it('are settled when the same week has been trained for long', () => {
    const { setsBefore } = LIFTER_MODEL;
    let settled = settledCondition(LIFTER_MODEL);
    const start = givenStrength(settled);
    for (let day = 0; day < 28; day += 1) {
      settled = dayLater(afterSets(settled, LIFTER_MODEL, setsBefore / 7), LIFTER_MODEL, 0);
    }
    expect(givenStrength(settled)).toBeCloseTo(start, 6);
  });
});

// Strength falls little in three to four weeks without training, and by some 7–12 % in eight to
// twelve (Mujika and Padilla 2000, memory).
it('loses little in three weeks without training, and 5 to 12 % in twelve', () => {
  const { strengthPerUnit } = LIFTER_MODEL;
  const settled = settledCondition(LIFTER_MODEL);
  const lostIn = (days: number): number =>
    strengthPerUnit * (givenStrength(settled) - givenStrength(daysLater(settled, days)));
  expect(lostIn(21)).toBeLessThan(0.03);
  expect(lostIn(84)).toBeGreaterThan(0.05);
  expect(lostIn(84)).toBeLessThan(0.12);
});

it('varies every number of the model, each within its bounds', () => {
  const varied = varyModel({ ...LIFTER_MODEL, growth: 0.01 }, 0.3, seededRandom(7));
  for (const [name, value] of Object.entries({ ...LIFTER_MODEL, growth: 0.01 })) {
    const share = varied[name as keyof typeof varied] / value;
    expect(share, name).not.toBe(1);
    expect(Math.abs(share - 1), name).toBeLessThanOrEqual(0.3);
  }
});
