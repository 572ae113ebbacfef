import { describe, expect, test } from 'vitest';
import { oneRepMax, repsToFailureAt, shareOfMax } from '../../src/training/strength.ts';

// Coefficients as printed: Brzycki 1993, JOPERD 64(1):88–90; Epley 1985.
const brzycki = (load: number, reps: number): number => (36 * load) / (37 - reps);
const epley = (load: number, reps: number): number => load * (1 + reps / 30);

// Other equations, coefficients as printed: what the curve may be expected to lie among.
const OTHERS: Record<string, (load: number, reps: number) => number> = {
  'Lombardi 1989': (load, reps) => load * reps ** 0.1,
  'Mayhew 1992': (load, reps) => (100 * load) / (52.2 + 41.9 * Math.exp(-0.055 * reps)),
  "O'Conner 1989": (load, reps) => load * (1 + reps / 40),
  'Wathan 1994': (load, reps) => (100 * load) / (48.8 + 53.8 * Math.exp(-0.075 * reps)),
};

describe('the strength curve', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('is Brzycki at %i reps', (reps) => {
    expect(oneRepMax(100, reps)).toBeCloseTo(brzycki(100, reps), 9);
  });

  test.each([10, 11, 12, 15, 20, 31])('is the Epley line at %i reps', (reps) => {
    expect(oneRepMax(100, reps)).toBeCloseTo(epley(100, reps), 9);
  });

  test('is joined where the two equations agree, which from 1 to 15 reps is only at 10', () => {
    const equal = Array.from({ length: 15 }, (_, at) => at + 1).filter(
      (reps) => Math.abs(brzycki(100, reps) - epley(100, reps)) < 1e-9,
    );
    expect(equal).toEqual([10]);
  });

  test('gives the load itself at one rep, which the Epley line does not', () => {
    expect(oneRepMax(100, 1)).toBe(100);
    expect(epley(100, 1)).toBeGreaterThan(103);
  });

  test('does not reach Brzycki’s pole at 37', () => {
    expect(Number.isFinite(oneRepMax(100, 37))).toBe(true);
    expect(oneRepMax(100, 40)).toBeGreaterThan(oneRepMax(100, 37));
  });

  test.each([2, 4, 6, 8, 10, 12, 15])(
    'at %i reps lies within 8 %% of the middle of the six',
    (reps) => {
      const six = [...Object.values(OTHERS), brzycki, epley]
        .map((of) => of(100, reps))
        .sort((a, b) => a - b);
      const middle = (six[2]! + six[3]!) / 2;
      expect(Math.abs(oneRepMax(100, reps) / middle - 1)).toBeLessThan(0.08);
    },
  );
});

// Printed: 1/(1 + 0.0333 r) in whole percent for r = 1…12. The curve follows it from 10 on.
test.each([
  [10, 75],
  [11, 73],
  [12, 71],
])('the Epley line at %i reps is %i %% of the maximum', (reps, percent) => {
  expect(Math.round(shareOfMax(reps) * 100)).toBe(percent);
});

// NSCA chart, Essentials of Strength Training and Conditioning; only to 10, where editions agree.
describe('against the NSCA chart', () => {
  const CHART = [100, 95, 93, 90, 87, 85, 83, 80, 77, 75];

  test('the curve is at most 2.5 points of percent away at each rep, and equal at 1 and 10', () => {
    const away = CHART.map((percent, at) => shareOfMax(at + 1) * 100 - percent);
    console.info(
      `curve − NSCA chart, points: ${away.map((points, at) => `${at + 1}: ${points.toFixed(1)}`).join(', ')}`,
    );
    for (const points of away) expect(Math.abs(points)).toBeLessThanOrEqual(2.5);
    expect(away[0]).toBeCloseTo(0, 9);
    expect(away[9]).toBeCloseTo(0, 9);
  });

  test.each([
    [275, 9, 357],
    [365, 4, 405],
    [135, 10, 180],
  ])('%i lb for %i reps: the chart says %i lb, the curve is within 2 %%', (load, reps, max) => {
    expect(Math.abs(oneRepMax(load, reps) / max - 1)).toBeLessThan(0.02);
  });

  test('reps at a share of the maximum come back within one of the chart', () => {
    for (const [at, percent] of CHART.entries()) {
      expect(Math.abs(repsToFailureAt(percent, 100) - (at + 1))).toBeLessThan(1);
    }
  });
});
