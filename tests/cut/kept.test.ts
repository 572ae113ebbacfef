import { describe, expect, it } from 'vitest';
import { keptByLift, keptHeadline } from '../../src/cut/kept.ts';
import { keptOverTime } from '../../src/cut/kept-over-time.ts';
import { strengthTracks } from '../../src/cut/strength-tracks.ts';
import type { Past } from '../../src/progression/past.ts';
import { day, every, LIFTS, type MadeResult, madePast, madeResult } from './made.ts';

const CUT = '2026-09-07';
const dates = every(7, CUT, 6);
const squat = (on: string, load: number, reps: number, more: Partial<MadeResult> = {}) =>
  madeResult({ lift: LIFTS.squat, on, load, counts: [reps, reps], ...more });

const kept = (past: Past, on = '2026-10-14') =>
  keptByLift(strengthTracks(past, day(CUT)), day(on), past.bodyMassOn);

describe('strength kept', () => {
  it('is the best of the last two sessions ÷ the best of the first two', () => {
    // Five reps at one in reserve are six to failure at every session: the loads alone compare.
    const past = madePast(
      [100, 102, 101, 98, 96, 97].map((kg, at) => squat(dates[at] ?? '', kg, 5)),
    );
    const [line] = kept(past);
    expect(line).toMatchObject({ lift: 'back-squat', state: 'known', sessions: 6 });
    expect(line?.state === 'known' && line.share).toBeCloseTo(97 / 102, 9);
  });

  it('gives e1RM and body weight on one line', () => {
    // NSCA chart (Essentials of Strength Training and Conditioning): six reps are 85 % of the maximum.
    const past = madePast(dates.map((on) => squat(on, 100, 5)));
    const [line] = kept(past);
    if (line?.state !== 'known') throw new Error('six sessions tell');
    expect(line.now / 1e9 / (100 / 0.85)).toBeCloseTo(1, 1);
    expect(line.perBodyMass).toBeCloseTo(line.now / 80e9, 9);
  });

  it('is not told under four sessions that count', () => {
    const past = madePast(dates.slice(-3).map((on) => squat(on, 100, 5)));
    expect(kept(past)).toMatchObject([{ state: 'not-yet', sessions: 3 }]);
    expect(keptHeadline(kept(past))).toBeNull();
  });

  it('never measures the learning of a lift, layoffs, lighter weeks or pain', () => {
    // Training amendments, item 16: the first session, 60 × 8 called 4 in reserve, is no baseline.
    const past = madePast([
      squat(dates[0] ?? '', 140, 5, { move: 'start' }),
      squat(dates[0] ?? '', 140, 5, { move: 'return' }),
      squat(dates[1] ?? '', 140, 5, { lighter: true }),
      squat(dates[1] ?? '', 140, 5, { pain: true }),
      ...dates.slice(2).map((on) => squat(on, 100, 5)),
    ]);
    const [line] = kept(past);
    expect(line?.state === 'known' && line.share).toBe(1);
  });

  it('does not trust a set far from failure', () => {
    const past = madePast([
      ...dates.slice(0, 2).map((on) => squat(on, 100, 5)),
      ...dates.slice(2, 4).map((on) => squat(on, 100, 5, { reserve: 5 })),
      ...dates.slice(4).map((on) => squat(on, 95, 5)),
    ]);
    const [line] = kept(past);
    expect(line?.sessions).toBe(4);
    expect(line?.state === 'known' && line.share).toBeCloseTo(0.95, 9);
  });

  it('counts the two sessions nearest before the cut as the first, and none older than 28 days', () => {
    const past = madePast([
      squat('2026-08-01', 150, 5),
      squat('2026-08-20', 120, 5),
      squat('2026-08-27', 110, 5),
      squat('2026-09-03', 105, 5),
      ...dates.map((on) => squat(on, 99, 5)),
    ]);
    const [line] = kept(past);
    expect(line?.state === 'known' && line.share).toBeCloseTo(99 / 110, 9);
  });

  it('compares a lift within one range, the one with the most sessions', () => {
    // Started in 5–8, now 12–15: from the curve alone the strength would seem to change.
    const past = madePast([
      ...dates.slice(0, 2).map((on) => squat(on, 100, 5)),
      ...dates.slice(2).map((on) => squat(on, 70, 12, { range: [12, 15] })),
    ]);
    expect(kept(past)).toMatchObject([{ range: [12, 15], sessions: 4, state: 'known', share: 1 }]);
  });

  it('counts body weight lifts with the body: 10 pull-ups at 85 and at 80 kg are 94 %', () => {
    // Training amendments, item 3: e1RM 116.2 → 109.3 kg, kept 94 %.
    const results = dates.map((on) =>
      madeResult({ lift: LIFTS.pullUp, on, load: 0, counts: [10, 8], range: [8, 12] }),
    );
    const [line] = kept(madePast(results, (date) => (date.month === 9 && date.day < 20 ? 85 : 80)));
    if (line?.state !== 'known') throw new Error('six sessions tell');
    expect(line.share).toBeCloseTo(0.94, 2);
    expect(line.then / 1e9).toBeCloseTo(116.2, 1);
    expect(line.now / 1e9).toBeCloseTo(109.3, 1);
    expect(kept(madePast(results, null))).toMatchObject([{ state: 'weigh-in-missing' }]);
  });

  it('leaves out timed holds, and lifts that were given up', () => {
    const past = madePast([
      ...dates.map((on) =>
        madeResult({ lift: LIFTS.plank, on, load: 0, counts: [45], range: [30, 60] }),
      ),
      ...dates.map((on) => squat(on, 100, 5)),
    ]);
    expect(kept(past)).toHaveLength(1);
    expect(kept(past, '2026-11-30')).toHaveLength(0);
  });

  it('has the median over compound lifts as its headline', () => {
    const lift = (of: MadeResult['lift'], share: number) =>
      dates.map((on, at) =>
        madeResult({ lift: of, on, load: at < 2 ? 100 : 100 * share, counts: [5] }),
      );
    const past = madePast([
      ...lift(LIFTS.squat, 0.9),
      ...lift(LIFTS.bench, 0.98),
      ...lift(LIFTS.row, 1.02),
      ...lift(LIFTS.raise, 0.5),
    ]);
    expect(keptHeadline(kept(past))).toBeCloseTo(0.98, 9);
  });

  it('is told week by week, without hindsight', () => {
    const past = madePast(
      [100, 100, 100, 100, 95, 95].map((kg, at) => squat(dates[at] ?? '', kg, 5)),
    );
    const weeks = keptOverTime(past, day(CUT), day('2026-10-14'));
    expect(weeks.map(({ date, kept: share }) => [date.toString(), share])).toEqual([
      ['2026-09-07', null],
      ['2026-09-14', null],
      ['2026-09-21', null],
      ['2026-09-28', 1],
      ['2026-10-05', 1],
      ['2026-10-12', 0.95],
      ['2026-10-14', 0.95],
    ]);
  });
});
