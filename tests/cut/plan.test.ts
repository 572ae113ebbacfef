import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlanQuestion, planOf } from '../../src/cut/plan.ts';
import { kilograms } from '../../src/training/mass.ts';
import { day } from './made.ts';

const TODAY = day('2026-11-25');

const plan = (goal: { kg?: number; date?: string }, more: Partial<PlanQuestion> = {}) =>
  planOf({
    program: {
      goal: { mass: goal.kg === undefined ? null : kilograms(goal.kg), date: goal.date ?? null },
      rate: [0.5, 1],
    },
    today: TODAY,
    now: kilograms(80),
    rate: null,
    pause: null,
    since: TODAY,
    ...more,
  });

const known = (
  percentAWeek: number,
  standardError: number,
  weightError = 0,
): PlanQuestion['rate'] => ({
  kind: 'known',
  percentAWeek,
  standardError,
  weightError,
  weighIns: 18,
  from: TODAY,
  to: TODAY,
});

const days = (date: { toString(): string } | null | undefined) =>
  date ? TODAY.until(date.toString(), { largestUnit: 'days' }).days : null;

describe('the plan of a cut', () => {
  it('gives the range of days of the band, worked out by hand', () => {
    // 80 → 76 kg: ln 0.95 ÷ ln 0.99 = 5.10 weeks, ln 0.95 ÷ ln 0.995 = 10.23 weeks.
    const found = plan({ kg: 76 });
    expect(days(found?.reached?.early)).toBe(36);
    expect(days(found?.reached?.late)).toBe(72);
    expect(found).toMatchObject({ measured: false, tooFast: null, reached: { breaks: 0 } });
  });

  it('is wider by what is unsure of the present weight', () => {
    // 1 % of 80 kg to both sides at 90 %: from 79.2 and from 80.8 kg at 0.7 % a week.
    const found = plan({ kg: 76 }, { rate: known(0.7, 0, 1 / 1.645) });
    const weeks = (from: number) => Math.ceil((7 * Math.log(76 / from)) / Math.log(0.993));
    expect(days(found?.reached?.early)).toBe(weeks(79.2));
    expect(days(found?.reached?.late)).toBe(weeks(80.8));
  });

  it('counts two weeks at maintenance for every sixteen of the cut', () => {
    // 80 → 72 kg: 10.48 weeks at 1 %, 21.02 at 0.5 %: one pause on the slow way.
    const found = plan({ kg: 72 });
    expect(days(found?.reached?.early)).toBe(74);
    expect(days(found?.reached?.late)).toBe(148 + 14);
    // Sixteen weeks are over already: the pause is due before anything else.
    expect(days(plan({ kg: 76 }, { since: day('2026-07-01') })?.reached?.early)).toBe(36 + 14);
  });

  it('goes by the own trend with its error, and is open where that may stand still', () => {
    const found = plan({ kg: 76 }, { rate: known(0.7, 0.1) });
    expect(found?.rates.map((rate) => rate.toFixed(2))).toEqual(['0.54', '0.86']);
    expect(plan({ kg: 76 }, { rate: known(0.2, 0.2) })?.reached?.late).toBeNull();
  });

  it('gives the range of weights on a day', () => {
    // Ten weeks: 80 × 0.99^10 = 72.35 kg, 80 × 0.995^10 = 76.09 kg.
    const { onDate } = plan({ date: '2027-02-03' }) ?? {};
    expect((onDate?.low ?? 0) / 1e9).toBeCloseTo(72.35, 1);
    expect((onDate?.high ?? 0) / 1e9).toBeCloseTo(76.09, 1);
  });

  it('loses nothing in what is left of a pause', () => {
    // Seven days of it, today counted, then ten weeks as above.
    const pause = { from: TODAY, until: TODAY.add({ days: 6 }), why: 'pause-wanted' };
    const { onDate } = plan({ date: '2027-02-10' }, { pause }) ?? {};
    expect((onDate?.low ?? 0) / 1e9).toBeCloseTo(72.35, 1);
    expect(days(plan({ kg: 76 }, { pause })?.reached?.early)).toBe(7 + 36);
  });

  it('tells a day that only a rate over the band would reach', () => {
    // 5 % in four weeks: 1 − 0.95^(1 ÷ 4) = 1.27 % a week.
    expect(plan({ kg: 76, date: '2026-12-23' })?.tooFast).toBeCloseTo(1.27, 2);
    expect(plan({ kg: 76, date: '2027-02-03' })?.tooFast).toBeNull();
  });

  it('plans nothing without a goal below the present weight, nor one a quarter below', () => {
    expect(plan({})).toBeNull();
    expect(plan({ kg: 81 })).toBeNull();
    expect(plan({ kg: 59 })).toBeNull();
    expect(plan({ date: '2026-11-25' })).toBeNull();
  });

  it('never goes faster than the band, whatever was measured', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 61, max: 79, noNaN: true }),
        (percent, error, kg) => {
          const found = plan({ kg }, { rate: known(percent, error) });
          expect(found?.rates[1]).toBeLessThanOrEqual(1);
          expect(found?.rates[0]).toBeLessThanOrEqual(found?.rates[1] ?? 0);
          const { early, late } = found?.reached ?? {};
          if (early && late) expect(days(late) ?? 0).toBeGreaterThanOrEqual(days(early) ?? 0);
        },
      ),
    );
  });
});
