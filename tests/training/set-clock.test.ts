import { describe, expect, test } from 'vitest';
import {
  type ClockedExercise,
  exerciseSeconds,
  ownPace,
  sessionSeconds,
  setSeconds,
} from '../../src/training/set-clock.ts';

const squat: ClockedExercise = {
  counts: 'reps',
  sets: [6, 5, 5],
  rest: { from: 180, to: 300 },
  perSide: false,
  warmUps: 3,
};

test('a rep takes three seconds, a held second one, and each side its own time', () => {
  expect(setSeconds(8, squat)).toBe(24);
  expect(setSeconds(45, { counts: 'seconds', perSide: false })).toBe(45);
  expect(setSeconds(8, { counts: 'reps', perSide: true })).toBe(48);
});

test('an exercise is its warm-ups, its sets and the middle of its rests between them', () => {
  // 3 × 75 + 16 × 3 + 2 × 240
  expect(exerciseSeconds(squat)).toBe(753);
  expect(exerciseSeconds({ ...squat, sets: [] })).toBe(225);
});

describe('a session', () => {
  test('has a minute from one exercise to the next', () => {
    expect(sessionSeconds([squat, squat])).toBe(753 + 60 + 753);
    expect(sessionSeconds([squat, squat], 1, 120)).toBe(753 + 120 + 753);
    expect(sessionSeconds([])).toBe(0);
  });

  test('of two lifts in turn is their warm-ups, then each set when breath and its own rest allow', () => {
    const pair = { ...squat, sets: [6, 6], pair: 'a' };
    // Sets of 18 s. The first ends at 18, its partner after a breath of 75 s at 111; the second
    // waits for its own 240 s, 258 to 276, and its partner for its own, 351 to 369.
    expect(sessionSeconds([pair, pair].map((each) => ({ ...each, warmUps: 0 })))).toBe(369);
    expect(sessionSeconds([pair, { ...pair, warmUps: 1 }])).toBe(4 * 75 + 369);
  });

  test('goes by the lifter’s own pace after five sessions, by its median', () => {
    const took = (...seconds: number[]) => seconds.map((each) => ({ planned: 1000, took: each }));
    expect(ownPace(took(1500, 1500, 1500, 1500))).toBe(1);
    expect(ownPace(took(1200, 1100, 9000, 1300, 1250, 1400))).toBe(1.25);
    expect(sessionSeconds([squat], 1.25)).toBe(941.25);
  });

  test('of no length tells nothing of pace', () => {
    expect(ownPace(Array(5).fill({ planned: 0, took: 900 }))).toBe(1);
    expect(ownPace(Array(5).fill({ planned: 1000, took: 0 }))).toBe(1);
    expect(ownPace(Array(5).fill({ planned: 0, took: 0 }))).toBe(1);
  });

  test('that took over three times its plan, or under a third, tells nothing of pace', () => {
    const five = (took: number) => Array(5).fill({ planned: 1000, took });
    expect(ownPace(five(2999))).toBe(2.999);
    expect(ownPace(five(3001))).toBe(1);
    expect(ownPace(five(334))).toBe(0.334);
    expect(ownPace(five(333))).toBe(1);
  });
});
