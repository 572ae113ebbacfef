import { describe, expect, it } from 'vitest';
import { straight } from './a-program.ts';
import { nextTime, play } from './next-time.ts';

describe('what a hold aims at', () => {
  const row = straight();

  it('is not more after failure: 6, 5, 5 with nothing left aims at 5, 5, 5 with one left', () => {
    const next = nextTime(row, [{ kg: 100, reps: [6, 5, 5], rir: 0, daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'hold', kg: 100, aims: [5, 5, 5] });
    expect(next.rules[0]).toBe('hold-reserve');
    expect(next.words[0]).toBe(
      'Set 1 ended with 0 in reserve where 1 should be left: same 100 kg, and stop earlier. Fewer reps are no miss down to 5.',
    );
  });

  it('is one more where the wanted reserve was kept', () => {
    const next = nextTime(row, [{ kg: 100, reps: [6, 5, 5], rir: 1, daysAgo: 3 }]);
    expect(next.aims).toEqual([7, 5, 5]);
  });

  it('asks the next set for the rep that one fell short of, and that one again after it', () => {
    const told = play(row, 100, [
      { reps: [7, 5, 5], rir: 1 },
      { reps: [7, 5, 5], rir: 1 },
      { reps: [7, 6, 5], rir: 1 },
      { reps: [7, 6, 5], rir: 1 },
    ]);
    expect(told.slice(1).map(({ aims }) => aims)).toEqual([
      [8, 5, 5],
      [7, 6, 5],
      [8, 6, 5],
      [7, 7, 5],
    ]);
  });

  it('asks no set for more than the one before it', () => {
    const next = nextTime(straight({ sets: 4 }), [
      { kg: 90, reps: [8, 7, 6, 5], rir: [0, 1, 1, 1], daysAgo: 3 },
    ]);
    expect(next.aims).toEqual([7, 7, 7, 5]);
    expect(next.words[0]).toBe(
      'Same 90 kg: one more in set 3; set 1 left less in reserve than wanted, so stop earlier there.',
    );
  });

  it('asks the first again where all fell short', () => {
    const told = play(straight({ sets: 1 }), 100, [
      { reps: [7], rir: 1 },
      { reps: [7], rir: 1 },
    ]);
    expect(told.slice(1).map(({ aims }) => aims)).toEqual([[8], [8]]);
  });

  it('asks for no more from a set that failed, though others kept their reserve', () => {
    const next = nextTime(row, [{ kg: 100, reps: [7, 6, 6], rir: [0, 1, 1], daysAgo: 3 }]);
    expect(next.aims).toEqual([6, 6, 6]);
  });

  it('counts fewer reps with the reserve kept as no miss while they are in the range', () => {
    const next = nextTime(row, [
      { kg: 100, reps: [7, 6, 6], rir: 0, daysAgo: 6 },
      { kg: 100, reps: [6, 5, 5], rir: 1, daysAgo: 3 },
    ]);
    expect(next).toMatchObject({ move: 'hold', aims: [7, 5, 5] });
    expect(next.rules).not.toContain('hold-missed');
  });

  it('follows each set after going up, not set 1 for all', () => {
    // Set 3 had nothing left: 80 × 8 to failure leaves 7.2 at 82.5 kg, 5.7 with 1.5 in reserve.
    const next = nextTime(row, [{ kg: 80, reps: [8, 8, 8], rir: [2, 1, 0], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'up', kg: 82.5, aims: [7, 6, 5] });
  });

  it('repeats the aims of an unfinished session, and never moves it', () => {
    const next = nextTime(row, [{ kg: 80, reps: [8, 8], daysAgo: 3, unfinished: true }]);
    expect(next).toMatchObject({
      move: 'hold',
      kg: 80,
      rules: expect.arrayContaining(['hold-unfinished']),
    });
  });

  it('never earns more load from sets saved as planned and not looked at', () => {
    const next = nextTime(row, [{ kg: 80, reps: [8, 8, 8], daysAgo: 3, entered: 'as-planned' }]);
    expect(next).toMatchObject({ move: 'hold', kg: 80, aims: [8, 8, 8] });
    expect(next.rules).toContain('hold-unconfirmed');
  });

  it('takes sets that were confirmed as good as typed', () => {
    const next = nextTime(row, [{ kg: 80, reps: [8, 8, 8], daysAgo: 3, entered: 'confirmed' }]);
    expect(next).toMatchObject({ move: 'up', kg: 82.5 });
  });
});

describe('reps in reserve that nobody gave', () => {
  it('count as the low end of what was asked', () => {
    const rated = nextTime(straight(), [{ kg: 80, reps: [8, 8, 8], rir: 1, daysAgo: 3 }]);
    const unrated = nextTime(straight(), [{ kg: 80, reps: [8, 8, 8], daysAgo: 3 }]);
    expect(unrated).toMatchObject({ move: rated.move, kg: rated.kg, aims: rated.aims });
  });

  it('count as 5 at most when a load is chosen', () => {
    const five = nextTime(straight(), [{ kg: 80, reps: [8, 8, 8], rir: 5, daysAgo: 3 }]);
    const nine = nextTime(straight(), [{ kg: 80, reps: [8, 8, 8], rir: 9, daysAgo: 3 }]);
    expect(nine).toMatchObject({ move: 'up', kg: five.kg, aims: five.aims });
  });
});

describe('a set that ended with more in reserve than wanted', () => {
  it('aims at the reps that leave what is wanted, up to the high end', () => {
    const next = nextTime(straight(), [{ kg: 80, reps: [6, 6, 6], rir: [4, 3, 2], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'hold', kg: 80, aims: [8, 7, 6] });
    expect(next.words[0]).toBe(
      'Set 1 ended with 4 in reserve where 2 are enough: same 80 kg, more reps (8, 7, 6).',
    );
  });
});
