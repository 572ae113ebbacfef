import { describe, expect, it } from 'vitest';
import { kilograms } from '../../src/training/mass.ts';
import { BEGIN, type MadeHistory, on, readReview } from './made-history.ts';

const loses =
  (percent: number) =>
  (at: number): number =>
    85 * (1 - percent / 100) ** (at / 7);

/** From its day on strength goes by so much a week. */
const falls =
  (from: number, aWeek: number) =>
  (at: number): number =>
    (1 - aWeek) ** (Math.max(0, at - from) / 7);

const yes = (rule: string, at: number) =>
  ({ rule, answer: 'yes', subject: null, date: BEGIN.add({ days: at }) }) as const;

const HISTORIES: Readonly<Record<string, MadeHistory>> = {
  steady: { weeks: 12 },
  'steady, on a Tuesday': { weeks: 13, today: 84 + 1 },
  'too fast': { weeks: 8, body: loses(1.3) },
  'far too fast': { weeks: 8, body: loses(2) },
  // Two kilograms of water in the first week, then on plan.
  water: { weeks: 4, body: (at) => loses(0.7)(at) + 2 * Math.exp(-at / 2.5) },
  stalled: { weeks: 9, body: (at) => loses(0.7)(Math.min(at, 28)) },
  missed: { weeks: 8, trained: (at) => at < 42 || at === 44 },
  'one missed': { weeks: 8, trained: (at) => at !== 51 },
  gaining: { weeks: 8, body: loses(-0.5) },
  'strength falls': { weeks: 9, strength: falls(21, 0.015) },
  'strength falls, not weighed': { weeks: 9, strength: falls(21, 0.015), body: null },
  'on the way to 75 kg': { weeks: 9, program: { goal: { mass: kilograms(75), date: null } } },
  'a day that is too soon': {
    weeks: 9,
    program: { goal: { mass: kilograms(75), date: '2026-09-01' } },
  },
  'the end': { weeks: 12, program: { goal: { mass: kilograms(79), date: null } } },
  'after the end': {
    weeks: 13,
    program: { goal: { mass: kilograms(79), date: null } },
    decisions: [
      { rule: 'do-less-in-file', answer: 'yes', subject: 'back-squat straight 5-8', date: BEGIN },
      yes('goal-reached', 84),
    ],
    aim: (at) => (at < 84 ? 'cut' : 'maintain'),
  },
  'after the end, all back': {
    weeks: 13,
    decisions: [yes('cut-ended', 84)],
    aim: (at) => (at < 84 ? 'cut' : 'maintain'),
  },
  'too fast, answered': { weeks: 8, body: loses(1.3), decisions: [yes('lose-slower', 54)] },
  'far too fast, answered': {
    weeks: 8,
    body: loses(2),
    decisions: [yes('lose-far-too-fast', 54)],
  },
  // Two kilograms up and down with the cycle, on plan beneath it.
  'monthly cycle': {
    weeks: 10,
    body: (at) => loses(0.6)(at) + Math.sin((at / 28) * 2 * Math.PI),
    program: { monthlyCycle: true },
  },
  'sixteen weeks': { weeks: 17, body: loses(0.6) },
  'a pause taken': {
    weeks: 18,
    body: (at) => loses(0.6)(Math.min(at, 114)),
    decisions: [yes('pause-cut-long', 115)],
    aim: (at) => (at < 115 ? 'cut' : 'maintain'),
  },
  'the pause over': {
    weeks: 20,
    body: (at) => loses(0.6)(at < 115 ? at : at < 129 ? 115 : at - 14),
    decisions: [yes('pause-cut-long', 115)],
    aim: (at) => (at >= 115 && at < 129 ? 'maintain' : 'cut'),
  },
  'away for two weeks': { weeks: 9, trained: (at) => at < 49 },
  'left for five weeks': { weeks: 13, trained: (at) => at < 56 },
  'advice off': { weeks: 8, body: loses(1.3), weightAdvice: false },
};

describe('the review of', () => {
  for (const [name, story] of Object.entries(HISTORIES)) {
    it(name, async () => {
      await expect(readReview(story)).toMatchFileSnapshot(
        `histories/${name.replaceAll(/[ ,]+/g, '-')}.txt`,
      );
    });
  }
});

describe('a review', () => {
  it('praises no lighter weight to who must not be led through a cut', () => {
    const text = readReview(HISTORIES['advice off']!);
    expect(text).not.toMatch(/kg lost|lighter|rate|body weight|% a week/i);
  });

  it('knows the day of its histories', () => {
    expect(on(0)).toBe('2026-06-01');
    expect(BEGIN.dayOfWeek).toBe(1);
  });
});
