import { describe, expect, it } from 'vitest';
import { drawModel } from '../../src/rehearsal/draws.ts';
import { LIFTER_MODEL, type LifterModel } from '../../src/rehearsal/lifter-model.ts';
import { reallyLifted } from '../../src/rehearsal/play-session.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import {
  afterSets,
  dayLater,
  givenStrength,
  type MuscleCondition,
  newLifter,
  settledCondition,
  trueStrength,
} from '../../src/rehearsal/simulated-lifter.ts';
import { kilograms } from '../../src/training/mass.ts';
import { varyModel } from './made-model.ts';

const untrained: MuscleCondition = { fitness: 0, fatigue: 0, sets: [0, 0, 0, 0, 0, 0, 0] };

const daysLater = (condition: MuscleCondition, days: number): MuscleCondition =>
  Array.from({ length: days }).reduce<MuscleCondition>(
    (each) => dayLater(each, LIFTER_MODEL),
    condition,
  );

const weeksOf = (sets: number, weeks: number): MuscleCondition => {
  let condition = untrained;
  for (let day = 0; day < weeks * 7; day += 1) {
    condition = dayLater(afterSets(condition, LIFTER_MODEL, sets / 7), LIFTER_MODEL);
  }
  return condition;
};

// Banister's form (1975); 38 and 19 days: Hellard 2006, J Sports Sci 24(5):509–520.
describe('fitness and fatigue', () => {
  it('of a set are such that strength is lower right after it, and higher later', () => {
    const trained = afterSets(untrained, LIFTER_MODEL, 4);
    expect(givenStrength(trained)).toBeLessThan(0);
    expect(givenStrength(daysLater(trained, 60))).toBeGreaterThan(0);
  });

  it('fall to 1/e in 38 and in 19 days', () => {
    const left = { ...untrained, fitness: 0.1, fatigue: 0.1 };
    expect(daysLater(left, 38).fitness).toBeCloseTo(0.1 / Math.E, 9);
    expect(daysLater(left, 19).fatigue).toBeCloseTo(0.1 / Math.E, 9);
  });

  it('are settled when the same week has been trained for long', () => {
    const settled = settledCondition(LIFTER_MODEL);
    const long = weeksOf(LIFTER_MODEL.setsBefore, 80);
    expect(long.fitness).toBeCloseTo(settled.fitness, 6);
    expect(long.fatigue).toBeCloseTo(settled.fatigue, 6);
  });

  // Strength rises with sets, ever less (Pelland 2024, second-hand): the tenth gives less than the second.
  it('give ever less for each set more, and take more from many on', () => {
    const given = (sets: number) => givenStrength(weeksOf(sets, 80));
    expect(given(2) - given(0)).toBeGreaterThan(given(10) - given(8));
    expect(given(4)).toBeLessThan(given(8));
    expect(given(20)).toBeLessThan(given(8) - 0.03);
  });
});

// Strength falls little in three to four weeks without training, and by some 7–12 % in eight to
// twelve (Mujika and Padilla 2000, memory).
it('loses little in three weeks without training, and 5 to 12 % in twelve', () => {
  const settled = settledCondition(LIFTER_MODEL);
  const lostIn = (days: number): number =>
    givenStrength(settled) - givenStrength(daysLater(settled, days));
  expect(lostIn(21)).toBeLessThan(0.03);
  expect(lostIn(84)).toBeGreaterThan(0.05);
  expect(lostIn(84)).toBeLessThan(0.12);
});

it('draws time constants from their printed intervals, and the lifter’s own growth where it is known', () => {
  const models = Array.from({ length: 200 }, (_, seed) => drawModel('trained', seededRandom(seed)));
  const mean = (of: (model: LifterModel) => number) =>
    models.reduce((sum, model) => sum + of(model), 0) / models.length;
  for (const { fitnessDays, fatigueDays } of models) {
    expect(fitnessDays).toBeGreaterThanOrEqual(17);
    expect(fitnessDays).toBeLessThanOrEqual(59);
    expect(fatigueDays).toBeGreaterThanOrEqual(6);
    expect(fatigueDays).toBeLessThanOrEqual(32);
  }
  expect(Math.abs(mean(({ fitnessDays }) => fitnessDays) - 38)).toBeLessThan(3);
  expect(Math.abs(mean(({ fatigueDays }) => fatigueDays) - 19)).toBeLessThan(2);
  const own = drawModel('trained', seededRandom(3), { mean: 0.02, error: 0 });
  expect(own.growth).toBe(0.02);
});

it('varies every number of the model, each within its bounds', () => {
  const varied = varyModel({ ...LIFTER_MODEL, growth: 0.01 }, 0.3, seededRandom(7));
  for (const [name, value] of Object.entries({ ...LIFTER_MODEL, growth: 0.01 })) {
    const share = varied[name as keyof typeof varied] / value;
    expect(share, name).not.toBe(1);
    expect(Math.abs(share - 1), name).toBeLessThanOrEqual(0.3);
  }
});

it('lifts nothing of a lift that it does not know, and of the body the share that the lift moves', () => {
  const lifter = newLifter(LIFTER_MODEL, new Map([['row', 100]]));
  expect(trueStrength(lifter, { lift: 'row', trains: { lats: 1 } })).toBe(100);
  expect(trueStrength(lifter, { lift: 'curl', trains: { biceps: 1 } })).toBe(0);
  const lifted = (bodyShare: number | null) =>
    reallyLifted({ bodyShare }, kilograms(10), kilograms(80)) / kilograms(1);
  expect(lifted(0.65)).toBe(62);
  expect(lifted(null)).toBe(10);
});
