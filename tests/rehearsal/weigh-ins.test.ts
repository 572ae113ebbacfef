import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { LIFTER_MODEL } from '../../src/rehearsal/lifter-model.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { weighInCourse } from '../../src/rehearsal/weigh-ins.ts';
import { kilograms } from '../../src/training/mass.ts';
import { massTrend } from '../../src/training/mass-trend.ts';

const FROM = Temporal.PlainDate.from('2026-01-05');
const course = (days: number, loss = 0.7, seed = 3) =>
  weighInCourse({ from: FROM, days, start: kilograms(80), loss }, LIFTER_MODEL, seededRandom(seed));
const dayOf = (date: Temporal.PlainDate): number => FROM.until(date).days;

describe('body weight over a rehearsal', () => {
  test('falls by the rate asked for every seven days, and rises where it is below 0', () => {
    expect(course(1).trueOn(FROM)).toBe(kilograms(80));
    expect(course(8).trueOn(FROM.add({ days: 7 })) / kilograms(80)).toBeCloseTo(0.993, 9);
    expect(course(15, -0.5).trueOn(FROM.add({ days: 14 })) / kilograms(80)).toBeCloseTo(
      1.005 ** 2,
      9,
    );
  });

  test('is weighed on the first morning, and on some 85 % of them', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      expect(course(3, 0.7, seed).weighIns[0]?.date.equals(FROM)).toBe(true);
    }
    const { weighIns } = course(2000, 0);
    expect(weighIns.length / 2000).toBeGreaterThan(0.83);
    expect(weighIns.length / 2000).toBeLessThan(0.87);
    expect(new Set(weighIns.map(({ date }) => dayOf(date))).size).toBe(weighIns.length);
    expect(dayOf(weighIns.at(-1)!.date)).toBeLessThan(2000);
  });

  test('is shown in tenths of a kilogram, off by the water of the day', () => {
    const { weighIns } = course(2000, 0);
    const off = weighIns.map(({ mass }) => mass / kilograms(80) - 1);
    const mean = off.reduce((sum, each) => sum + each, 0) / off.length;
    const deviation = Math.sqrt(
      off.reduce((sum, each) => sum + (each - mean) ** 2, 0) / off.length,
    );
    expect(Math.abs(mean)).toBeLessThan(LIFTER_MODEL.weighNoise / 10);
    expect(deviation / LIFTER_MODEL.weighNoise).toBeGreaterThan(0.95);
    expect(deviation / LIFTER_MODEL.weighNoise).toBeLessThan(1.05);
    for (const { mass } of weighIns) expect(mass % (kilograms(1) / 10)).toBe(0);
  });

  test('has the trend of the readings so far, the last one ever after', () => {
    const { weighIns, trendOn } = course(30);
    const levels = massTrend(weighIns.map(({ date, mass }) => ({ day: dayOf(date), value: mass })));
    for (const [at, { date }] of weighIns.entries()) {
      expect(trendOn(date)).toBe(Math.round(levels[at]!));
      const next = weighIns[at + 1]?.date;
      const between = date.add({ days: 1 });
      if (next && !next.equals(between)) expect(trendOn(between)).toBe(trendOn(date));
    }
    const last = FROM.add({ days: 29 });
    expect(trendOn(last.add({ days: 10 }))).toBe(trendOn(last));
    expect(trendOn(FROM.subtract({ days: 1 }))).toBeNull();
  });
});
