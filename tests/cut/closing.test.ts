import { describe, expect, it } from 'vitest';
import { closingOf } from '../../src/cut/closing.ts';
import { evidenceOf } from '../../src/cut/evidence.ts';
import { kilograms } from '../../src/training/mass.ts';
import { day, every, LIFTS, madePast, madeProgram, madeResult } from './made.ts';

const CUT = day('2026-08-31');
/** Seven weeks, the last day included. */
const END = CUT.add({ days: 48 });

/** A squat three times a week, three sets each; body weight falls by 0.1 kg a day. */
function closing(
  aim: 'cut' | 'maintain' = 'cut',
  load: (at: number) => number = () => 100,
  { end = END } = {},
) {
  const days = [0, 1, 2, 3, 4, 5, 6].flatMap((week) =>
    every(2, CUT.add({ weeks: week }).toString(), 3),
  );
  const results = days.map((on, at) =>
    madeResult({ lift: LIFTS.squat, on, load: load(at), counts: [6, 6, 6] }),
  );
  const kg = (date: typeof CUT) => 85 - CUT.until(date, { largestUnit: 'days' }).days / 10;
  const past = madePast(results, kg);
  const sessions = past.sessions.map((session) => ({ ...session, aim }));
  const program = madeProgram([{ lift: LIFTS.squat, sets: 3 }], { aim });
  return closingOf(
    evidenceOf({
      program,
      past: { ...past, sessions },
      weighIns: [],
      today: END,
      weightAdvice: true,
    }),
    end,
  );
}

describe('what a cut came to', () => {
  it('are its weeks, sessions and sets, from the first day to the last', () => {
    const report = closing();
    expect(report).toMatchObject({ weeks: 7, sessions: 21, planned: 21 });
    expect(report?.from.equals(CUT)).toBe(true);
    // 21 sessions of three sets in seven weeks.
    expect(report?.lifts.map(({ setsAWeek }) => setsAWeek)).toEqual([9]);
    expect(report?.body?.now).toBe(kilograms(85 - 4.8));
  });

  it('says of each lift whether it held, gained or lost, beyond what is unsure', () => {
    expect(closing()?.lifts[0]?.went).toBe('held');
    expect(closing('cut', (at) => 100 + at)?.lifts[0]?.went).toBe('gained');
    expect(closing('cut', (at) => 100 - at)?.lifts[0]?.went).toBe('lost');
  });

  it('counts the training of the day it is ended on, and the weight of that day', () => {
    // Wednesday of the seventh week: trained, and a Thursday without training.
    const wednesday = CUT.add({ days: 44 });
    const over = closing('cut', undefined, { end: wednesday });
    expect(over).toMatchObject({ weeks: 6, sessions: 20, planned: 18 });
    expect(over?.body?.now).toBe(kilograms(85 - 4.4));
    const thursday = closing('cut', undefined, { end: wednesday.add({ days: 1 }) });
    expect(thursday?.until.equals(wednesday)).toBe(true);
    expect(thursday?.sessions).toBe(20);
    expect(thursday?.body?.now).toBe(kilograms(85 - 4.5));
  });

  it('tells sets a week of the weeks that it names: 63 sets in 47 days are 9 in 7 weeks', () => {
    const friday = CUT.add({ days: 46 });
    const over = closing('cut', undefined, { end: friday });
    expect(over).toMatchObject({ weeks: 7, sessions: 21, planned: 21 });
    expect(over?.lifts.map(({ setsAWeek }) => setsAWeek)).toEqual([9]);
  });

  it('is nothing outside a cut', () => {
    expect(closing('maintain')).toBeNull();
  });
});
