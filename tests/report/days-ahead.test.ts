import { describe, expect, it } from 'vitest';
import { calendarEntries, daysAhead } from '../../src/report/calendar.ts';
import { day, every, LIFTS, madeProgram, madeSession } from '../cut/made.ts';
import { madeCut } from './made-cut.ts';

const base = madeProgram([{ lift: LIFTS.squat, sets: 3 }]);
const [only] = base.days;
if (!only) throw new Error('made with a day');
const program = { ...base, days: [only, { ...only, name: 'B' }] };

describe('the days ahead', () => {
  it('spreads sessions over the week for a lifter without habits', () => {
    // 23 November 2026 is a Monday (ISO 8601 calendar).
    const ahead = daysAhead(program, [], 'B', day('2026-11-24'), 2);
    expect(ahead.map(({ date, day: name }) => `${date} ${name}`)).toEqual([
      '2026-11-25 B',
      '2026-11-27 A',
      '2026-11-30 B',
      '2026-12-02 A',
      '2026-12-04 B',
      '2026-12-07 A',
    ]);
  });

  it.each([
    [1, [1]],
    [2, [1, 4]],
    [3, [1, 3, 5]],
    [4, [1, 2, 4, 5]],
    [5, [1, 2, 3, 5, 6]],
    [6, [1, 2, 3, 4, 5, 6]],
    [7, [1, 2, 3, 4, 5, 6, 7]],
  ])('of %d sessions a week are weekdays %j', (daysPerWeek, weekdays) => {
    const ahead = daysAhead({ ...program, daysPerWeek }, [], 'A', day('2026-11-23'), 1);
    expect(ahead.map(({ date }) => date.dayOfWeek)).toEqual(weekdays);
  });

  it('keeps to the weekdays that the lifter trains on', () => {
    const weekends = [
      ...every(7, '2026-11-01', 4),
      ...every(7, '2026-11-03', 3),
      ...every(7, '2026-11-05', 3),
    ];
    const ahead = daysAhead(
      program,
      weekends.map((on) => madeSession(on)),
      'A',
      day('2026-11-23'),
      1,
    );
    expect(ahead.map(({ date }) => date.dayOfWeek)).toEqual([2, 4, 7]);
  });
});

describe('a habit', () => {
  const weekdays = (...sessions: readonly ReturnType<typeof madeSession>[]) =>
    daysAhead({ ...program, daysPerWeek: 1 }, sessions, 'A', day('2026-11-25'), 1).map(
      ({ date }) => date.dayOfWeek,
    );
  const NONE = [1];

  it.each([
    ['of today', '2026-11-25', [3]],
    ['of four weeks ago to the day', '2026-10-28', [3]],
    ['of a day longer ago', '2026-10-27', NONE],
    ['of tomorrow, by a clock that was wrong', '2026-11-26', NONE],
  ])('is a session %s', (_, on, wanted) => {
    expect(weekdays(madeSession(on))).toEqual(wanted);
  });

  it('is no session without a set', () => {
    expect(weekdays({ ...madeSession('2026-11-20'), setsDone: 0 })).toEqual(NONE);
  });

  it('is the weekday trained on most; of two as often the one sooner in the week', () => {
    const [tuesday, friday] = [madeSession('2026-11-17'), madeSession('2026-11-20')];
    expect(weekdays(friday, tuesday)).toEqual([2]);
    expect(weekdays(friday, tuesday, madeSession('2026-11-13'))).toEqual([5]);
  });
});

describe('the entries of the calendar', () => {
  it('have no session without a set', () => {
    const empty = { ...madeSession('2026-11-20'), setsDone: 0 };
    expect(calendarEntries([empty], [], [], 'Lean spring', 'kg')).toEqual([]);
  });

  it('say what was lifted, and what is planned', () => {
    const { past } = madeCut();
    const ahead = [{ date: day('2026-11-25'), day: 'B' }];
    const entries = calendarEntries(past.sessions, past.results, ahead, 'Lean spring', 'kg');
    expect(entries).toHaveLength(21);
    expect(entries[0]).toMatchObject({ kind: 'done', title: 'Strength: Lean spring, A' });
    expect(entries[0]?.lines[0]).toBe('Back squat 100 kg: 7 6 5');
    expect(entries.at(-1)).toMatchObject({ kind: 'ahead', title: 'Strength: Lean spring, B' });
  });
});
