import { describe, expect, it } from 'vitest';
import { pageOf } from '../../src/report/page-of.ts';
import { pageHtml } from '../../src/report/svg/page.tsx';
import { madeCut, words } from './made-cut.ts';

const { past, review } = madeCut();
const view = pageOf(past, review, words, 'kg');

describe('the page of a history', () => {
  it('is the same as before, so that no change of a number goes unseen', async () => {
    await expect(`${JSON.stringify(view, null, 1)}\n`).toMatchFileSnapshot('page-view.txt');
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

  it('begins the cut four weeks before it, whatever years lie behind', () => {
    const cutFrom = review.evidence.cutFrom;
    const [first] = past.weighIns;
    if (!cutFrom || !first) throw new Error('made with a cut and weigh-ins');
    const old = { ...first, date: cutFrom.subtract({ days: 29 }) };
    const just = { ...first, date: cutFrom.subtract({ days: 28 }) };
    const before = {
      ...past,
      weighIns: [old, just, ...past.weighIns],
      bodyMassOn: () => first.mass,
    };
    const picture = pageOf(before, review, words, 'kg').body;
    expect(picture?.readings).toHaveLength(past.weighIns.length + 1);
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
