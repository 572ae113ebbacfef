import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { reviewFigures } from '../../src/report/review-figures.ts';
import { reviewText } from '../../src/report/review-text.ts';
import { day } from '../cut/made.ts';
import { madeCut, words } from './made-cut.ts';

describe('the review in text', () => {
  const { review } = madeCut();

  it('names the year of a rate that shows only in the next', () => {
    const { evidence } = review;
    const from = (earliest: string) => {
      const now = {
        kind: 'unknown',
        weighIns: 4,
        weighInsMissing: 3,
        earliest: day(earliest),
      } as const;
      const rate = evidence.rate && { ...evidence.rate, now };
      const figures = reviewFigures({ ...review, evidence: { ...evidence, rate } }, 'kg');
      return figures.find(({ name }) => name === 'Rate of loss')?.about;
    };
    expect(from('2027-01-17')).toBe('from 17 Jan 2027 on, with 7 weigh-ins');
    expect(from('2026-11-17')).toBe('from 17 Nov on, with 7 weigh-ins');
  });

  it('calls a rate by what it is, and one that is shown as 0.0 no gain', () => {
    const { evidence } = review;
    const known = evidence.rate?.now;
    if (!evidence.rate || known?.kind !== 'known') throw new Error('The rate is known.');
    const named = (percentAWeek: number) => {
      const rate = { ...evidence.rate, now: { ...known, percentAWeek } } as typeof evidence.rate;
      const figures = reviewFigures({ ...review, evidence: { ...evidence, rate } }, 'kg');
      return figures.filter(({ name }) => name.startsWith('Rate')).map(({ name }) => name);
    };
    expect([0.7, 0, -0.04].flatMap(named)).toEqual(Array(3).fill('Rate of loss'));
    expect([-0.05, -0.7].flatMap(named)).toEqual(Array(2).fill('Rate of gain'));
  });

  it('reads well at 80 columns', () => {
    const lines = reviewText(review, words, 'kg', { width: 80, glyphs: 'braille' });
    expect(lines.join('\n')).toMatchInlineSnapshot(`
      "Weekly review · Lean spring · Sun 18 Oct 2026

      Go on as you are: 101 % of your strength kept, body weight falls by 0.7 % a
      week, 6 of 6 sessions in two weeks.

      - Lats had more than 10 hard sets a week in the last two full weeks.

      Strength kept      101 % (99–103)  of 4 compound lifts together
      Body weight               82.9 kg  trend; 5.1 kg lost
      Waist                       88 cm  4 cm less than on 31 Aug
      Rate of loss   0.7 % a week ± 0.1  16 days weighed since 29 Sep
      Sessions                 17 of 18  in 6 full weeks

      Strength of each lift
      lift                    kept      e1RM  × body weight
      Back squat    100 % (97–104)  122.7 kg           1.48
      Bench press   100 % (97–104)     92 kg           1.11
      Barbell row  105 % (100–109)   91.5 kg           1.10
      Pull-up        98 % (95–102)  111.3 kg           1.34
      Side raise    100 % (97–104)     12 kg

      Hard sets a week (two full weeks)
      chest       ████████████████████████░░│                9
      front delts ████████████    ░░░░░░░░░░│              4.5
      side delts  ████████████████████░░░░░░│              7.5
      triceps     ████████████    ░░░░░░░░░░│              4.5
      biceps      ████████████████████░░░░░░│              7.5
      lats        ██████████████████████████│█████████████  15
      upper back  ████████████████████████░░│                9
      glutes      ████████████████████████░░│                9
      quads       ████████████████████████░░│                9
      hamstrings  ████████████    ░░░░░░░░░░│              4.5

      Week by week, Monday to Sunday
      week from  sessions  in reserve  hard reps
      7 Sep        3 of 3         1.2         48
      14 Sep       3 of 3         1.2         48
      21 Sep       2 of 3         1.0         32
      28 Sep       3 of 3         1.2         48
      5 Oct        3 of 3         1.2         48
      12 Oct       3 of 3         1.0         48

      Hard sets of each muscle by week
      muscle       7 Sep  14 Sep  21 Sep  28 Sep  5 Oct  12 Oct  days
      chest            9       9       6       9      9       9     3
      front delts    4.5     4.5       3     4.5    4.5     4.5     3
      side delts     7.5     7.5       5     7.5    7.5     7.5     3
      triceps        4.5     4.5       3     4.5    4.5     4.5     3
      biceps         7.5     7.5       5     7.5    7.5     7.5     3
      lats            15      15      10      15     15      15     3
      upper back       9       9       6       9      9       9     3
      glutes           9       9       6       9      9       9     3
      quads            9       9       6       9      9       9     3
      hamstrings     4.5     4.5       3     4.5    4.5     4.5     3"
    `);
  });

  it('tells the hard reps of a week longer than that it was a lighter one, where there is little room', () => {
    const weeks = review.weeks.map((week, at) => ({ ...week, lighter: at === 0 }));
    const shownAt = (width: number) => {
      const text = reviewText({ ...review, weeks }, words, 'kg', { width, glyphs: 'ascii' }).join(
        '\n',
      );
      const table = text.slice(text.indexOf('Week by week'), text.indexOf('Hard sets of each'));
      return ['hard reps', 'lighter'].filter((each) => table.includes(each)).length;
    };
    const shown = [60, 44, 42, 36, 32].map(shownAt);
    expect(shown).toEqual(shown.toSorted((a, b) => b - a));
    expect(new Set(shown)).toEqual(new Set([2, 1, 0]));
    const at = [60, 44, 42, 36, 32].find((width) => shownAt(width) === 1) ?? 0;
    const text = reviewText({ ...review, weeks }, words, 'kg', { width: at, glyphs: 'ascii' });
    expect(text.some((line) => line.includes('hard reps'))).toBe(true);
  });

  it('reads well on a phone', () => {
    const lines = reviewText(review, words, 'lb', { width: 34, glyphs: 'ascii' });
    expect(lines.join('\n')).toMatchInlineSnapshot(`
      "Weekly review · Lean spring · Sun
      18 Oct 2026

      Go on as you are: 101 % of your
      strength kept, body weight falls
      by 0.7 % a week, 6 of 6 sessions
      in two weeks.

      - Lats had more than 10 hard sets
        a week in the last two full
        weeks.

      Strength kept      101 % (99–103)
        of 4 compound lifts together
      Body weight              182.7 lb
        trend; 11.3 lb lost
      Waist                     34.6 in
        1.6 in less than on 31 Aug
      Rate of loss   0.7 % a week ± 0.1
        16 days weighed since 29 Sep
      Sessions                 17 of 18
        in 6 full weeks

      Strength of each lift
      lift                    kept
      Back squat    100 % (97–104)
      Bench press   100 % (97–104)
      Barbell row  105 % (100–109)
      Pull-up        98 % (95–102)
      Side raise    100 % (97–104)

      Hard sets a week (two full weeks)
      chest       ##########=|         9
      front delts #####  ::::|       4.5
      side delts  #########::|       7.5
      triceps     #####  ::::|       4.5
      biceps      #########::|       7.5
      lats        ###########|######  15
      upper back  ##########=|         9
      glutes      ##########=|         9
      quads       ##########=|         9
      hamstrings  #####  ::::|       4.5

      Week by week, Monday to Sunday
      week from  sessions  in reserve
      7 Sep        3 of 3         1.2
      14 Sep       3 of 3         1.2
      21 Sep       2 of 3         1.0
      28 Sep       3 of 3         1.2
      5 Oct        3 of 3         1.2
      12 Oct       3 of 3         1.0

      Hard sets of each muscle by week
      muscle       5 Oct  12 Oct  days
      chest            9       9     3
      front delts    4.5     4.5     3
      side delts     7.5     7.5     3
      triceps        4.5     4.5     3
      biceps         7.5     7.5     3
      lats            15      15     3
      upper back       9       9     3
      glutes           9       9     3
      quads            9       9     3
      hamstrings     4.5     4.5     3"
    `);
  });

  it('keeps the newest weeks of each muscle where there is no room for all', () => {
    // Muscle, days and the gaps between take 19 columns, a week its name and a gap.
    const weeks = (width: number) =>
      reviewText(review, words, 'kg', { width, glyphs: 'ascii' })
        .find((line) => line.startsWith('muscle '))
        ?.match(/\d+ (?:Sep|Oct)/g);
    expect(weeks(25)).toEqual(['12 Oct']);
    expect(weeks(31)).toEqual(['12 Oct']);
    expect(weeks(32)).toEqual(['5 Oct', '12 Oct']);
    expect(weeks(40)).toEqual(['28 Sep', '5 Oct', '12 Oct']);
  });

  it('is never wider than asked', () => {
    for (const width of [20, 34, 50, 80, 120]) {
      for (const line of reviewText(review, words, 'kg', { width, glyphs: 'braille' })) {
        expect(stringWidth(line)).toBeLessThanOrEqual(width);
      }
    }
  });

  it('says nothing about body weight to a lifter who must not be told', () => {
    const quiet = reviewText(madeCut(false).review, words, 'kg', {
      width: 80,
      glyphs: 'braille',
    }).join('\n');
    expect(quiet).not.toMatch(/Body weight|Rate of loss|weigh/);
    expect(quiet).toContain('Strength kept');
  });
});
