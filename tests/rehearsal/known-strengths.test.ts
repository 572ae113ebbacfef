import { expect, test } from 'vitest';
import { knownStrengths, ownGrowth } from '../../src/rehearsal/known-strengths.ts';
import { kilograms } from '../../src/training/mass.ts';
import { day, LIFTS, madePast, madeResult } from '../cut/made.ts';

const TODAY = day('2026-11-25');

/** Weekly sessions of some lifts over eight weeks, the load another by so much a week. */
const weekly = (lifts: readonly (typeof LIFTS)['squat'][], aWeek: number) =>
  madePast(
    Array.from({ length: 8 }, (_, week) => week).flatMap((week) =>
      lifts.map((lift) =>
        madeResult({
          lift,
          on: TODAY.subtract({ days: 7 * (8 - week) - 5 }).toString(),
          load: 100 * (1 + aWeek) ** week,
          counts: [6, 6],
          reserve: 1,
        }),
      ),
    ),
  );

const THREE = [LIFTS.squat, LIFTS.bench, LIFTS.row];

test('growth of late is told a week, with its error, and of three lifts at least', () => {
  const [up, none] = [0.01, 0].map((aWeek) => ownGrowth(weekly(THREE, aWeek), TODAY));
  expect(up?.mean).toBeGreaterThan(0.005);
  expect(up?.mean).toBeLessThan(0.013);
  expect(Math.abs(none?.mean ?? 1)).toBeLessThan(0.002);
  for (const each of [up, none]) {
    expect(each?.error).toBeGreaterThan(0.0002);
    expect(each?.error).toBeLessThan(0.005);
  }
  expect(ownGrowth(weekly(THREE.slice(1), 0.01), TODAY)).toBeNull();
});

test('strength that is known is what could be lifted once, of a hold the longest of the last session', () => {
  const known = knownStrengths(weekly(THREE, 0), TODAY);
  // 100 kg for six with one left: 100 × 36 ÷ 30 (Brzycki 1993), within a tenth.
  expect((known.get('back-squat') ?? 0) / kilograms(120)).toBeGreaterThan(0.9);
  expect((known.get('back-squat') ?? 0) / kilograms(120)).toBeLessThan(1.1);
  const held = ['2026-11-16', '2026-11-19', '2026-11-23'].map((on, at) =>
    madeResult({
      lift: LIFTS.plank,
      on,
      load: 0,
      counts: [[60], [50], [40, 45]][at]!,
      range: [30, 60],
    }),
  );
  expect(knownStrengths(madePast(held), TODAY).get('plank')).toBe(45);
  expect(knownStrengths(madePast(held), TODAY.add({ days: 120 })).has('plank')).toBe(false);
});
