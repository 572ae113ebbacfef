import { describe, expect, it } from 'vitest';
import { keptByLift, keptTogether } from '../../src/cut/kept.ts';
import { keptOverTime } from '../../src/cut/kept-over-time.ts';
import type { Past } from '../../src/progression/past.ts';
import { day, every, LIFTS, type MadeResult, madePast, madeResult } from './made.ts';

const CUT = '2026-09-07';
const dates = every(3, CUT, 24);
const END = '2026-11-16';
const squat = (on: string, load: number, reps: number, more: Partial<MadeResult> = {}) =>
  madeResult({ lift: LIFTS.squat, on, load, counts: [reps, reps], ...more });

const kept = (past: Past, on = END) => keptByLift(past, day(CUT), day(on));
const steady = (load = 100) => dates.map((on) => squat(on, load, 5));

describe('strength kept', () => {
  it('is what is left of the strength that the cut began with, and how well that is known', () => {
    // Five reps at one in reserve are six to failure at every session: the loads alone compare.
    const past = madePast(dates.map((on, at) => squat(on, 100 * (1 - (0.06 * at) / 23), 5)));
    const [line] = kept(past);
    expect(line).toMatchObject({ lift: 'back-squat', state: 'known', sessions: 24 });
    if (line?.state !== 'known') throw new Error('24 sessions tell');
    expect(line.low).toBeLessThan(0.94);
    expect(line.high).toBeGreaterThan(0.94);
    expect(line.share).toBeCloseTo(0.94, 1);
    expect(line.high - line.low).toBeLessThan(0.1);
  });

  it('is all of it where every session is the same', () => {
    const [line] = kept(madePast(steady()));
    expect(line?.state === 'known' && line.share).toBeCloseTo(1, 2);
  });

  it('gives e1RM and body weight on one line', () => {
    // NSCA chart (Essentials of Strength Training and Conditioning): six reps are 85 % of the maximum.
    const [line] = kept(madePast(steady()));
    if (line?.state !== 'known') throw new Error('24 sessions tell');
    expect(line.now / 1e9 / (100 / 0.85)).toBeCloseTo(1, 1);
    expect(line.perBodyMass).toBeCloseTo(line.now / 80e9, 9);
  });

  it('is not told under four sessions that count', () => {
    const past = madePast(dates.slice(-3).map((on) => squat(on, 100, 5)));
    expect(kept(past)).toMatchObject([{ state: 'not-yet', sessions: 3 }]);
    expect(keptTogether(past, day(CUT), day(END))).toBeNull();
  });

  it.each([1, 2, 3, 7])('is not told %i days before the cut begins', (days) => {
    const past = madePast(steady());
    const from = day(END).add({ days });
    expect(keptByLift(past, from, day(END))).toMatchObject([{ state: 'not-yet' }]);
    expect(keptTogether(past, from, day(END))).toBeNull();
    expect(keptByLift(past, day(END), day(END))).toMatchObject([{ state: 'known' }]);
  });

  it('never measures the learning of a lift, layoffs, lighter weeks or pain', () => {
    const past = madePast([
      squat(dates[0] ?? '', 140, 5, { move: 'start' }),
      squat(dates[0] ?? '', 140, 5, { move: 'return' }),
      squat(dates[1] ?? '', 140, 5, { lighter: true }),
      squat(dates[1] ?? '', 140, 5, { pain: true }),
      ...dates.slice(2).map((on) => squat(on, 100, 5)),
    ]);
    const [line] = kept(past);
    expect(line?.state === 'known' && line.share).toBeCloseTo(1, 2);
  });

  it('does not trust a set far from failure', () => {
    const past = madePast([
      ...steady(),
      ...dates.slice(2, 6).map((on) => squat(on, 150, 5, { reserve: 6 })),
    ]);
    const [line] = kept(past);
    expect(line?.sessions).toBe(24);
    expect(line?.state === 'known' && line.share).toBeCloseTo(1, 2);
  });

  it('takes what was shown in the 28 days before the cut into its beginning, and nothing older', () => {
    const old = squat('2026-08-01', 200, 5);
    const before = every(3, '2026-08-14', 7).map((on) => squat(on, 110, 5));
    const [alone] = kept(madePast(steady()));
    const [first] = kept(madePast([old, ...steady()]));
    const [whole] = kept(madePast([...before, ...steady()]));
    expect(first).toEqual(alone);
    expect(whole?.state === 'known' && whole.share).toBeLessThan(0.98);
  });

  it('does not take another range for another strength', () => {
    // Started in 5–8, now 12–15: how a lifter’s own curve lies between them is not known.
    const past = madePast([
      ...dates.slice(0, 8).map((on) => squat(on, 100, 5)),
      ...dates.slice(8).map((on) => squat(on, 70, 12, { range: [12, 15] })),
    ]);
    const [line] = kept(past);
    if (line?.state !== 'known') throw new Error('24 sessions tell');
    expect(line.sessions).toBe(24);
    expect(line.low).toBeLessThan(1);
    expect(line.high).toBeGreaterThan(1);
  });

  it('counts body weight lifts with the body: the same pull-ups at 80 as at 85 kg are 94 %', () => {
    const results = dates.map((on) =>
      madeResult({ lift: LIFTS.pullUp, on, load: 0, counts: [10, 9], range: [8, 12] }),
    );
    const [line] = kept(madePast(results, (date) => (date.month <= 9 ? 85 : 80)));
    if (line?.state !== 'known') throw new Error('24 sessions tell');
    expect(line.low).toBeLessThan(0.941);
    expect(line.high).toBeGreaterThan(0.941);
    expect(kept(madePast(results, null))).toMatchObject([{ state: 'weigh-in-missing' }]);
  });

  it('leaves out timed holds, and lifts that were given up', () => {
    const past = madePast([
      ...dates.map((on) =>
        madeResult({ lift: LIFTS.plank, on, load: 0, counts: [45], range: [30, 60] }),
      ),
      ...steady(),
    ]);
    expect(kept(past)).toHaveLength(1);
    expect(kept(past, '2026-12-31')).toHaveLength(0);
  });

  it('has all compound lifts together as its headline, known better than each', () => {
    const lift = (of: MadeResult['lift'], share: number) =>
      dates.map((on, at) =>
        madeResult({ lift: of, on, load: 100 * (1 - ((1 - share) * at) / 23), counts: [5, 5] }),
      );
    const past = madePast([
      ...lift(LIFTS.squat, 0.94),
      ...lift(LIFTS.bench, 0.96),
      ...lift(LIFTS.row, 0.98),
      ...lift(LIFTS.raise, 0.5),
    ]);
    const lifts = kept(past);
    const together = keptTogether(past, day(CUT), day(END));
    if (!together) throw new Error('three compounds tell');
    expect(together.share).toBeCloseTo(0.96, 1);
    for (const each of lifts) {
      if (each.state !== 'known' || each.kind !== 'compound') continue;
      expect(together.high - together.low).toBeLessThan(each.high - each.low);
    }
  });

  it('is told week by week, without hindsight', () => {
    const results = dates.map((on, at) => squat(on, at < 12 ? 100 : 92, 5));
    const weeks = keptOverTime(madePast(results), day(CUT), day(END));
    const early = keptOverTime(madePast(results.slice(0, 12)), day(CUT), day('2026-10-11'));
    expect(weeks.slice(0, 5)).toEqual(early.slice(0, 5));
    expect(weeks[0]?.kept).toBeNull();
    expect(weeks.at(-1)?.kept?.share).toBeLessThan(0.97);
  });
});
