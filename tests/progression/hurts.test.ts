import { describe, expect, it } from 'vitest';
import { HURTS, hurtsOn } from '../../src/progression/hurts.ts';
import type { Decision } from '../../src/progression/past.ts';
import { TODAY } from './a-past.ts';

const said = (
  rule: string,
  ago: number,
  answer: 'yes' | 'no' = 'yes',
  subject = 'shoulder',
): Decision => ({ rule, answer, subject, at: -ago, date: TODAY.subtract({ days: ago }) });
const hurting = (...decisions: readonly Decision[]) =>
  hurtsOn(decisions, TODAY).map(({ joint, since, forToday }) => [
    joint,
    since.until(TODAY, { largestUnit: 'days' }).days,
    forToday,
  ]);

describe('what hurts', () => {
  it('for a day is over the next', () => {
    expect(hurting(said(HURTS.today, 0))).toEqual([['shoulder', 0, true]]);
    expect(hurting(said(HURTS.today, 1))).toEqual([]);
    expect(hurting(said(HURTS.today, 0), said(HURTS.today, 0, 'no'))).toEqual([]);
  });

  it('until it is taken back lasts, and is as old as when it was said first', () => {
    const twice = [said(HURTS.lasting, 20), said(HURTS.lasting, 3)];
    expect(hurting(...twice)).toEqual([['shoulder', 20, false]]);
    expect(hurting(...twice, said(HURTS.lasting, 1, 'no'))).toEqual([]);
    const anew = [...twice, said(HURTS.lasting, 2, 'no'), said(HURTS.lasting, 1)];
    expect(hurting(...anew)).toEqual([['shoulder', 1, false]]);
  });

  it('is each joint by itself', () => {
    expect(hurting(said(HURTS.lasting, 5), said(HURTS.today, 0, 'yes', 'knee'))).toEqual([
      ['shoulder', 5, false],
      ['knee', 0, true],
    ]);
  });
});
