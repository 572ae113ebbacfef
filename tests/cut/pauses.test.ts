import { describe, expect, it } from 'vitest';
import { aimInForce, isEnd, pauseBefore, pauseOn, pausesSaid } from '../../src/cut/aim-in-force.ts';
import type { Decision } from '../../src/progression/past.ts';
import { day } from './made.ts';

const on = (of: number) => day(`2026-09-${String(of).padStart(2, '0')}`);
const said = (of: number, rule: string, answer: Decision['answer']): Decision => ({
  rule,
  answer,
  subject: null,
  at: 0,
  date: on(of),
});
const told = (...decisions: readonly Decision[]) =>
  pausesSaid(decisions).map(({ from, until, why }) => [from.day, until?.day ?? null, why]);

describe('a pause of a cut', () => {
  it('lasts two weeks from a yes to one that is offered, or wished for', () => {
    for (const rule of ['pause-cut', 'pause-cut-long', 'pause-wanted']) {
      expect(told(said(1, rule, 'yes'))).toEqual([[1, 14, rule]]);
      expect(told(said(1, rule, 'no'))).toEqual([]);
    }
  });

  it('is begun once: a second yes within it changes nothing, one after it begins another', () => {
    const first = said(1, 'pause-cut', 'yes');
    expect(told(first, said(14, 'pause-wanted', 'yes'))).toEqual([[1, 14, 'pause-cut']]);
    expect(told(first, said(15, 'pause-wanted', 'yes'))).toEqual([
      [1, 14, 'pause-cut'],
      [15, 28, 'pause-wanted'],
    ]);
  });

  it('ends the day before a no to it; begun and ended on one day it never was', () => {
    const first = said(1, 'pause-cut', 'yes');
    expect(told(first, said(5, 'pause-in-force', 'no'))).toEqual([[1, 4, 'pause-cut']]);
    expect(told(first, said(1, 'pause-in-force', 'no'))).toEqual([]);
    expect(told(first, said(5, 'pause-in-force', 'yes'))).toEqual([[1, 14, 'pause-cut']]);
    // One that is over cannot be ended.
    expect(told(first, said(20, 'pause-in-force', 'no'))).toEqual([[1, 14, 'pause-cut']]);
    expect(told(said(5, 'pause-in-force', 'no'))).toEqual([]);
  });

  it('is a rest until the lifter says otherwise where no cut is meant, or none any more', () => {
    for (const [rule, answer] of [
      ['not-a-cut', 'no'],
      ['weight-stands-still', 'no'],
      ['goal-reached', 'yes'],
      ['cut-ended', 'yes'],
    ] as const) {
      const rest = said(1, rule, answer);
      expect(told(rest)).toEqual([[1, null, rule]]);
      expect(told(rest, said(20, 'cut-at-rest', 'yes'))).toEqual([[1, 19, rule]]);
      expect(told(said(1, rule, answer === 'yes' ? 'no' : 'yes'))).toEqual([]);
      expect(isEnd(pausesSaid([rest])[0]!)).toBe(['goal-reached', 'cut-ended'].includes(rule));
    }
  });

  it('is the one that a day lies in, both ends included, and the one before a day', () => {
    const decisions = [said(1, 'pause-cut', 'yes'), said(20, 'goal-reached', 'yes')];
    expect([1, 14, 15, 19, 20, 30].map((of) => pauseOn(decisions, on(of))?.why ?? null)).toEqual([
      'pause-cut',
      'pause-cut',
      null,
      null,
      'goal-reached',
      'goal-reached',
    ]);
    expect(pauseBefore(decisions, on(14))).toBeNull();
    expect(pauseBefore(decisions, on(15))?.until.day).toBe(14);
    expect(pauseBefore(decisions, on(30))?.until.day).toBe(14);
  });

  it('is trained as maintenance, as is a cut of who must not lose', () => {
    const aim = (of: number, weightAdvice = true, program: 'cut' | 'build' = 'cut') =>
      aimInForce({
        program: { aim: program },
        weightAdvice,
        decisions: [said(1, 'pause-cut', 'yes')],
        today: on(of),
      });
    expect([aim(14), aim(15)]).toEqual(['maintain', 'cut']);
    expect(aim(15, false)).toBe('maintain');
    expect([aim(5, true, 'build'), aim(5, false, 'build')]).toEqual(['build', 'build']);
  });
});
