import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CUT_LIMITS } from '../../src/cut/cut-limits.ts';
import { type PlanQuestion, planOf, weightBand } from '../../src/cut/plan.ts';
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

  it('plans for a goal under the present weight and down to a quarter below, and for tomorrow', () => {
    expect(plan({ kg: 80 })).toBeNull();
    expect(plan({ kg: 80 * CUT_LIMITS.farthestGoal })).not.toBeNull();
    expect(plan({ date: TODAY.add({ days: 1 }).toString() })?.onDate).not.toBeNull();
    // Of what may be reached already: tomorrow.
    const close = plan({ kg: 79.9 }, { rate: known(0.7, 0, 1) });
    expect(days(close?.reached?.early)).toBe(1);
  });

  it.each([
    ['stands almost still, and may lose as planned', known(0.2, 0.1), [0.2 - 0.1645, 0.5]],
    ['gains, and may lose as planned', known(-0.4, 0.1), [0, 0.5]],
    ['is at the slow end', known(0.5, 0), [0.5, 0.5]],
    ['is inside', known(0.7, 0.1), [0.7 - 0.1645, 0.7 + 0.1645]],
    ['is too fast, and is to lose as planned', known(2, 0.1), [1, 1]],
  ])('takes the rate of a lifter who %s', (_, rate, expected) => {
    const found = plan({ kg: 76 }, { rate });
    expect(found?.rates[0]).toBeCloseTo(expected[0]!, 9);
    expect(found?.rates[1]).toBeCloseTo(expected[1]!, 9);
    expect(found?.measured).toBe(true);
  });

  it('tells the late day up to two years ahead, and down to a hundredth of a percent a week', () => {
    // 660 days at 0.1 % a week have five whole times of 112 days behind their last: 70 days of pauses.
    const at = (lossDays: number) => 80 * 0.999 ** ((lossDays - 0.5) / 7);
    const late = (kg: number, percent: number) =>
      days(plan({ kg }, { rate: known(percent, 0) })?.reached?.late);
    expect(late(at(660), 0.1)).toBe(CUT_LIMITS.planDays);
    expect(late(at(661), 0.1)).toBeNull();
    expect(late(79.995, 0.01)).toBe(5);
    expect(late(79.995, 0.0099)).toBeNull();
  });

  it('has a pause after every 112 days of loss, those behind counted', () => {
    const due = CUT_LIMITS.pauseAfterDays;
    const breaks = (lossDays: number, daysBehind = 0, more: Partial<PlanQuestion> = {}) =>
      plan(
        { kg: 80 * 0.995 ** ((lossDays - 0.5) / 7) },
        { since: TODAY.subtract({ days: daysBehind }), ...more },
      )?.reached?.breaks;
    expect([breaks(due), breaks(due + 1)]).toEqual([0, 1]);
    expect([breaks(12, due - 12), breaks(12, due - 11)]).toEqual([0, 1]);
    const pause = { from: TODAY, until: TODAY, why: 'pause-wanted' };
    expect(breaks(12, due, { pause })).toBe(0);
  });

  it('takes pauses off the days until a day, and loses a day at least', () => {
    const low = (ahead: number, more: Partial<PlanQuestion> = {}) =>
      (plan({ date: TODAY.add({ days: ahead }).toString() }, more)?.onDate?.low ?? 0) / 1e9;
    const lost = (lossDays: number) => 80 * 0.99 ** (lossDays / 7);
    expect(low(200)).toBeCloseTo(lost(200 - CUT_LIMITS.pauseDays), 9);
    const since = TODAY.subtract({ days: 150 });
    expect(low(20, { since })).toBeCloseTo(lost(20 - CUT_LIMITS.pauseDays), 9);
    expect(low(3, { since })).toBeCloseTo(lost(1), 9);
    const pause = { from: TODAY, until: TODAY.add({ days: 6 }), why: 'pause-wanted' };
    expect(low(3, { pause })).toBeCloseTo(lost(1), 9);
    expect(low(9, { pause })).toBeCloseTo(lost(2), 9);
  });

  it('shades where weight should be week by week, once the water of the first days is lost', () => {
    const from = TODAY.add({ days: CUT_LIMITS.waterDays });
    const shaded = (today: number) =>
      weightBand(TODAY, from.add({ days: today }), [0.5, 1], () => kilograms(80));
    expect(shaded(0)).toEqual([]);
    for (const [today, steps] of [
      [1, [0, 1]],
      [7, [0, 7]],
      [8, [0, 7, 8]],
      [15, [0, 7, 14, 15]],
    ] as const) {
      expect(shaded(today).map(({ date }) => from.until(date).days)).toEqual(steps);
      for (const [at, { low, high }] of shaded(today).entries()) {
        expect(low / 1e9).toBeCloseTo(80 * 0.99 ** (steps[at]! / 7), 9);
        expect(high / 1e9).toBeCloseTo(80 * 0.995 ** (steps[at]! / 7), 9);
      }
    }
    expect(weightBand(TODAY, from.add({ days: 9 }), [0.5, 1], () => null)).toEqual([]);
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
