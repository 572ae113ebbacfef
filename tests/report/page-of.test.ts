import { describe, expect, it } from 'vitest';
import { CUT_LIMITS } from '../../src/cut/cut-limits.ts';
import type { Review } from '../../src/cut/review.ts';
import { CHECK_LIMITS } from '../../src/program/check/check-limits.ts';
import type { Result } from '../../src/progression/past.ts';
import { pageOf } from '../../src/report/page-of.ts';
import { keptWords } from '../../src/report/review-figures.ts';
import { pageHtml } from '../../src/report/svg/page.tsx';
import { CAUTIONS } from '../../src/training/cautions.ts';
import { dayNumber } from '../../src/training/day-number.ts';
import type { Lift } from '../../src/training/lift.ts';
import { inUnit, type Mass } from '../../src/training/mass.ts';
import { LIFTS, madeResult } from '../cut/made.ts';
import { madeCut, words } from './made-cut.ts';

const { past, review } = madeCut();
const view = pageOf(past, review, words, 'kg');

describe('the page of a history', () => {
  it('says what the review says, with its sources', () => {
    const { headline, below } = review.verdict;
    expect(view.headline).toBe(words(headline.reason).text);
    expect(view.findings).toEqual(below.map(({ reason }) => words(reason)));
    expect(view).toMatchObject({ program: 'Lean spring', made: 'Sun 18 Oct 2026', unit: 'kg' });
    expect(view.caution).toBe(CAUTIONS[0]);
  });

  it('leads with the few numbers that matter most', () => {
    expect(view.figures.map(({ name, value, about }) => `${name}: ${value}, ${about}`)).toEqual([
      expect.stringMatching(/^Strength kept: \d+ % \(\d+–\d+\), of 4 compound lifts together$/),
      'Body weight: 82.9 kg, trend; 5.1 kg lost',
      'Waist: 88 cm, 4 cm less than on 31 Aug',
      'Rate of loss: 0.7 % a week ± 0.1, 16 days weighed since 29 Sep',
      'Sessions: 17 of 18, in 6 full weeks',
    ]);
  });

  it('shows every weigh-in on its day, with the trend, and tells the last of each week', () => {
    const days = past.weighIns.map(({ date, mass }) => [dayNumber(date), inUnit(mass, 'kg')]);
    expect(view.body?.readings).toEqual(days);
    const [slow, fast] = review.evidence.program.rate;
    expect(view.body?.bandSays).toBe(`${slow}–${fast} % a week`);
    const trend = past.weighIns.map(({ date }) => inUnit(past.bodyMassOn(date)!, 'kg'));
    expect(view.body?.trend.map(([, kg]) => kg)).toEqual(trend);
    const lastOfWeeks = past.weighIns
      .map(({ date, mass }, at) => ({ date, mass, trend: trend[at]! }))
      .filter(({ date }, at) => date.weekOfYear !== past.weighIns[at + 1]?.date.weekOfYear);
    expect(view.body?.table.rows).toEqual(
      lastOfWeeks.map((on) => [
        on.date.toString(),
        inUnit(on.mass, 'kg').toFixed(1),
        on.trend.toFixed(1),
      ]),
    );
  });

  it('shows strength kept against weight lost from the second week of the cut to today', () => {
    const { body, evidence } = review;
    const [lost, kept] = view.kept?.points.at(-1) ?? [];
    expect(lost).toBeCloseTo((1 - body!.now / body!.atStart!) * 100, 9);
    expect(kept).toBeCloseTo(evidence.kept!.share * 100, 9);
    const table = view.kept?.table.rows ?? [];
    expect(table.map(([date]) => date)).toEqual([
      ...[14, 21, 28, 35, 42].map((days) => evidence.cutFrom?.add({ days }).toString()),
      review.today.toString(),
    ]);
    expect(table.map(([, ...numbers]) => numbers)).toEqual(
      view.kept?.points.map(([lost, kept]) => [lost.toFixed(1), kept.toFixed(1)]),
    );
  });

  it('ends the line of each lift today, at the figure that the review tells', () => {
    const told = new Map(
      review.evidence.lifts.flatMap((lift) =>
        lift.state === 'known' ? [[lift.name, inUnit(Math.round(lift.now) as Mass, 'kg')]] : [],
      ),
    );
    expect(told.size).toBeGreaterThan(3);
    for (const { name, strength } of view.lifts) {
      const [day, kg] = strength.line.at(-1) ?? [];
      expect(day).toBe(dayNumber(review.today));
      expect(kg?.toFixed(1)).toBe(told.get(name)?.toFixed(1));
    }
  });

  it('shows the best of every session of a lift, and among them what the sessions say together', () => {
    // Brzycki 1993: 100 kg for 7 with 2 in reserve is worth 100 × 36 / (37 − 9).
    const best = ((100 * 36) / (37 - 9)).toFixed(1);
    expect(view.lifts[0]?.table.rows[0]).toEqual(['2026-08-31', '100 kg', '7 6 5', best]);
    for (const { name, points, strength, table } of view.lifts) {
      const [values, days] = [points.map(([, kg]) => kg), points.map(([day]) => day)];
      expect(table.rows.map((row) => Number(row[3]))).toEqual(
        values.map((kg) => Number(kg.toFixed(1))),
      );
      expect(strength.bands).toHaveLength(1);
      // Week by week until today.
      expect(strength.line.map(([day]) => day)).toEqual(
        [0, 7, 14, 21, 28, 35, 42].map((later) => days[0]! + 6 + later),
      );
      for (const [at, [day, middle]] of strength.line.entries()) {
        const [on, low, high] = strength.bands[0]!.edges[at]!;
        expect([on, low < middle, middle < high], name).toEqual([day, true, true]);
        expect(middle, name).toBeGreaterThan(Math.min(...values) * 0.99);
        expect(middle, name).toBeLessThan(Math.max(...values) * 1.01);
      }
    }
  });

  it('tells of each lift what is kept of it', () => {
    const told = new Map(view.lifts.map(({ name, note }) => [name, note]));
    for (const kept of review.evidence.lifts) {
      expect(told.get(kept.name)).toBe(`${keptWords(kept, true)} kept`);
    }
    expect(told.size).toBe(review.evidence.lifts.length);
    const few = { ...review, evidence: { ...review.evidence, lifts: [] } };
    expect(pageOf(past, few, words, 'kg').lifts.map(({ note }) => note)).toEqual(
      view.lifts.map(() => ''),
    );
  });

  it('shows only lifts of the last four weeks of which a session tells the strength', () => {
    const result = (lift: Lift, daysAgo: number, counts = [6]) =>
      madeResult({
        lift,
        load: 60,
        counts,
        on: review.today.subtract({ days: daysAgo }).toString(),
      });
    const { presentDays } = CUT_LIMITS;
    const shown = (...results: Result[]) =>
      pageOf({ ...past, results }, review, words, 'kg').lifts.map(({ name, points }) => [
        name,
        points.length,
      ]);
    expect(shown(result(LIFTS.squat, presentDays))).toEqual([]);
    expect(shown(result(LIFTS.squat, presentDays - 1))).toEqual([['Back squat', 1]]);
    // Seconds of a hold tell no strength, and an exercise that was left out tells nothing.
    expect(shown(result(LIFTS.plank, 1), result(LIFTS.row, 1, []))).toEqual([]);
    // What stands in the program comes in its order, and then the rest.
    expect(shown(result(LIFTS.bench, 3), result(LIFTS.squat, 2))).toEqual([
      ['Back squat', 1],
      ['Bench press', 1],
    ]);
  });

  it('shows a single muscle in a single week, and none before the first', () => {
    const week = { ...review.weeks[0]!, hardSets: new Map([['chest', 2.5] as const]) };
    const of = (muscles: Review['muscles']) =>
      pageOf(past, { ...review, weeks: [week], muscles }, words, 'kg').muscles;
    expect(of(['chest'])?.muscles).toEqual([{ name: 'Chest', sets: [2.5] }]);
    expect(of(['calves'])?.muscles).toEqual([{ name: 'Calves', sets: [0] }]);
    expect(of([])).toBeNull();
  });

  it('counts the hard sets of six weeks, and fewer in that of the missed session', () => {
    const sets = new Map(view.muscles?.muscles.map((muscle) => [muscle.name, muscle.sets]));
    // Three sets of rows and two pull-ups, three times a week; the fourth week has two sessions.
    expect(sets.get('Lats')).toEqual([15, 15, 10, 15, 15, 15]);
    expect(sets.get('Hamstrings')).toEqual([4.5, 4.5, 3, 4.5, 4.5, 4.5]);
    expect(view.muscles).toMatchObject({
      weeks: ['7 Sep', '14 Sep', '21 Sep', '28 Sep', '5 Oct', '12 Oct'],
      band: CHECK_LIMITS.weeklySets.cut,
    });
    const { headings, rows } = view.muscles!.table;
    expect(headings).toEqual(['week from', ...sets.keys()]);
    expect(rows[2]).toEqual(['2026-09-21', ...[...sets.values()].map((weeks) => `${weeks[2]}`)]);
  });

  it('shows the lifts trained, in the order of the program, with what is kept', () => {
    expect(view.lifts.map(({ name }) => name)).toEqual([
      'Back squat',
      'Bench press',
      'Barbell row',
      'Pull-up',
      'Side raise',
    ]);
    expect(view.lifts[0]?.points).toHaveLength(20);
    expect(view.lifts[0]?.note).toMatch(/^\d+ % \(\d+–\d+\) kept$/);
  });

  it('shows body weight from the first to the last weigh-in, and the planned range from the second week on', () => {
    const { body } = view;
    expect(body?.readings).toHaveLength(past.weighIns.length);
    const [first, last] = [body?.band?.edges[0], body?.band?.edges.at(-1)];
    expect(first?.[0]).toBe((body?.readings[0]?.[0] ?? 0) + 7);
    expect(first?.[1]).toBe(first?.[2]);
    // Helms 2014: 0.5–1 % a week; 41 days from there on.
    expect((last?.[1] ?? 0) / (first?.[1] ?? 1)).toBeCloseTo(0.99 ** (41 / 7), 6);
    expect((last?.[2] ?? 0) / (first?.[2] ?? 1)).toBeCloseTo(0.995 ** (41 / 7), 6);
  });

  it('gives the numbers of every picture in its table', () => {
    expect(view.kept?.table.rows).toHaveLength(view.kept?.points.length ?? -1);
    expect(view.muscles?.table.rows).toHaveLength(6);
    expect(view.body?.table.rows).toHaveLength(7);
  });

  it.each([
    ['four weeks before the cut', review.evidence.cutFrom!.subtract({ days: 28 }), review],
    [
      'without a cut half a year ago',
      review.today.subtract({ days: 182 }),
      { ...review, evidence: { ...review.evidence, cutFrom: null } },
    ],
  ])('begins %s, whatever years lie behind, and ends today', (_, first, asked) => {
    const [weighIn, waist] = [past.weighIns[0]!, past.waists[0]!];
    const outsideAndIn = [
      first.subtract({ days: 1 }),
      first,
      asked.today,
      asked.today.add({ days: 1 }),
    ];
    const long = {
      ...past,
      weighIns: outsideAndIn.map((date) => ({ ...weighIn, date })),
      waists: outsideAndIn.slice(0, 3).map((date) => ({ ...waist, date })),
      bodyMassOn: () => weighIn.mass,
    };
    const shown = pageOf(long, asked, words, 'kg');
    const ends = [dayNumber(first), dayNumber(asked.today)];
    expect(shown.body?.readings.map(([on]) => on)).toEqual(ends);
    expect(shown.waist?.points.map(([on]) => on)).toEqual(ends);
    expect(
      pageOf({ ...long, waists: long.waists.slice(1, 2) }, asked, words, 'kg').waist,
    ).toBeNull();
  });

  it('shows the waist of the cut with its numbers, and not to a lifter who must not be told', () => {
    expect(view.waist?.table.rows).toEqual([
      [expect.any(String), '92.0'],
      [expect.any(String), '90.0'],
      [expect.any(String), '88.0'],
    ]);
    expect(view.figures).toContainEqual(
      expect.objectContaining({ name: 'Waist', value: '88 cm', about: '4 cm less than on 31 Aug' }),
    );
    expect(pageHtml(view)).toContain('Waist, cm');
    const quiet = madeCut(false);
    const html = pageHtml(pageOf(quiet.past, quiet.review, words, 'kg'));
    expect(html).not.toContain('Waist');
  });

  it('shows a single weigh-in, and no planned range before there are two ends of it', () => {
    const [first] = past.weighIns;
    const single = pageOf({ ...past, weighIns: [first!] }, review, words, 'kg');
    expect(single.body?.readings).toEqual([[dayNumber(first!.date), inUnit(first!.mass, 'kg')]]);
    expect(single.body?.table.rows).toHaveLength(1);
    const began = { ...review, evidence: { ...review.evidence, cutFrom: review.today } };
    expect(pageOf(past, began, words, 'kg').body?.band).toBeNull();
  });

  it('says why it shows no body weight', () => {
    const none = pageOf({ ...past, weighIns: [] }, { ...review, body: null }, words, 'kg');
    expect(none.noBody).toBe('No body weight is shown: there is no weigh-in yet.');
    const { past: quietPast, review: quiet } = madeCut(false);
    expect(pageOf(quietPast, quiet, words, 'kg').noBody).toMatch(/not switched on/);
    expect(view.noBody).toBeNull();
  });

  it('has no word or picture of body weight for a lifter who must not be told', () => {
    const quiet = madeCut(false);
    const html = pageHtml(pageOf(quiet.past, quiet.review, words, 'kg'));
    expect(html).not.toMatch(/Body weight, kg|weight lost|Rate of loss/);
  });
});
