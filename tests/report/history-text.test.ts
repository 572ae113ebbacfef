import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { type StrengthOn, strengthOver } from '../../src/progression/lift-strength.ts';
import { historyText, strengthPlot } from '../../src/report/history-text.ts';
import { liftRows, searchHistory } from '../../src/report/lift-rows.ts';
import { dateOfDay, dayNumber } from '../../src/training/day-number.ts';
import { madeCut } from './made-cut.ts';

const { past } = madeCut();

describe('the history in text', () => {
  it('shows a lift with its plot, the newest session last', () => {
    const rows = liftRows(past.results, 'back-squat', past.bodyMassOn);
    const lines = historyText(rows, strengthOver(past, 'back-squat'), 'kg', {
      width: 72,
      glyphs: 'ascii',
    });
    expect(lines.slice(0, 22).join('\n')).toMatchInlineSnapshot(`
      "Back squat: e1RM, kg
         |
      130+
         |o                                           o
         |      ::::::::::::::::::::::::::::::::::::::::::::::::::::::::::::::
         |      ::::::::::::::::::::::::::::::::::::::::::::::::::::::::::::::
      125+      ::::o::o::::::o:::::o::::o::::::::::::::::::::::o::o:::::::o::
         |      :::::*********************************************************
         |     ******:::::::::::::::::::::::::::::::::::::::::::::::::::::::::
      120+  o  o::::::::::o::::::o::::::::::::o::::o:::::o:::o::::::::::o::::o
         |      ::::::::::::::::::::::::::::::::::::::::::::::::::  ::::::::::
         |      ::::::::
      115+
         ++-------------------+--------------------+--------------------+-----
          31 Aug           14 Sep               28 Sep               12 Oct
      dots: sessions; line: what they say together; shaded: 90 % sure

      date          load  done   in reserve  best e1RM  move
      2026-08-31  100 kg  7 6 5  2 2 2        128.6 kg  start
      2026-09-02  100 kg  6 6 5  1 1 1          120 kg  hold
      2026-09-04  100 kg  6 6 5  1 1 1          120 kg  hold
      2026-09-07  100 kg  7 6 5  1 1 1        124.1 kg  hold"
    `);
  });

  it('writes clusters, body weight and timed loads as the lifter thinks of them', () => {
    const text = historyText(liftRows(past.results, null, past.bodyMassOn), [], 'kg', {
      width: 100,
      glyphs: 'ascii',
    }).join('\n');
    expect(text).toMatch(/Side raise +8 kg a hand +14, then 4 4 3/);
    expect(text).toMatch(/Pull-up +body weight \+ 5 kg +7 6/);
  });

  it('is never wider than asked', () => {
    for (const width of [18, 34, 60, 100]) {
      for (const lift of [null, 'back-squat']) {
        for (const line of historyText(
          liftRows(past.results, lift, past.bodyMassOn),
          lift === null ? [] : strengthOver(past, lift),
          'kg',
          {
            width,
            glyphs: 'braille',
          },
        )) {
          expect(stringWidth(line)).toBeLessThanOrEqual(width);
        }
      }
    }
  });

  it('draws the estimate from the day of the first session that is shown, and no day before', () => {
    const rows = liftRows(past.results, 'back-squat', past.bodyMassOn).slice(3);
    const first = dayNumber(rows[0]!.result.date);
    const on = (at: number) =>
      ({ date: dateOfDay(first + at), low: 1e11, middle: 1e11, high: 1e11 }) satisfies StrengthOn;
    const { line } = strengthPlot([-3, -1, 0, 2].map(on), rows, 'kg');
    expect(line.map(([at]) => at - first)).toEqual([0, 2]);
  });

  it('stands with nothing to show', () => {
    expect(historyText([], [], 'kg', { width: 60, glyphs: 'braille' }).length).toBeLessThanOrEqual(
      1,
    );
  });
});

describe('the search in the history', () => {
  const notes = (session: string) => (session === 's-2026-09-02' ? ['slept badly'] : []);
  const found = (query: string) => searchHistory(past.results, query, notes);

  it('finds by lift, by date and by note, every word of it', () => {
    expect(new Set(found('squat').map(({ exercise }) => exercise.lift))).toEqual(
      new Set(['back-squat']),
    );
    expect(found('2026-09').every(({ date }) => date.month === 9)).toBe(true);
    expect(found('Slept').map(({ session }) => session)).toEqual(Array(5).fill('s-2026-09-02'));
    expect(found('slept squat')).toHaveLength(1);
    expect(found('squat bench')).toEqual([]);
    expect(found('  ')).toHaveLength(past.results.length);
  });
});
