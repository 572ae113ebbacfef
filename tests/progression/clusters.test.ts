import { describe, expect, it } from 'vitest';
import { aGear, dumbbells } from './a-gear.ts';
import { cluster } from './a-program.ts';
import { nextTime, play } from './next-time.ts';

const gear = aGear({ dumbbells: dumbbells(6, 8, 9, 10, 12) });
const coarse = aGear({ dumbbells: dumbbells(6, 8, 10, 12) });
const raise = cluster();

describe('a cluster with a lead of 12–15', () => {
  it('goes up when the lead opens the gate and three mini-sets follow it', () => {
    // 8 kg × 18 to failure is a best of 12.8; at 9 kg that is 12.7 to failure, 12.2 with 0.5 left.
    const next = nextTime(raise, [{ kg: 8, reps: [18, 5, 5, 5], rir: 0, daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'up', kg: 9, rules: ['up-cluster'] });
    expect(next.words[0]).toBe(
      'The lead set reached 18 at 8 kg a hand with 3 mini-sets after it, so on to 9 kg a hand.',
    );
  });

  it('goes up for honest minis that fall, not only for timid ones that match', () => {
    const honest = nextTime(raise, [{ kg: 8, reps: [18, 5, 5, 4], rir: 0, daysAgo: 3 }], { gear });
    expect(honest.move).toBe('up');
  });

  it('does not go up with two minis: same lead, one mini more', () => {
    const next = nextTime(raise, [{ kg: 8, reps: [18, 5, 4], rir: 0, daysAgo: 3 }], { gear });
    expect(next).toMatchObject({
      move: 'hold',
      kg: 8,
      rules: ['hold-cluster-minis', 'holding-wins'],
    });
    expect(next.words[0]).toBe(
      'The lead set is there with 18: same 8 kg a hand, and do 3 mini-sets this time.',
    );
  });

  it('asks for all its minis where the program has fewer than three', () => {
    const short = cluster({ mostSets: 3 });
    const next = nextTime(short, [{ kg: 8, reps: [18, 5, 5], rir: 0, daysAgo: 3 }], { gear });
    expect(next.move).toBe('up');
  });

  it('asks for one lead rep more below the target', () => {
    const next = nextTime(raise, [{ kg: 8, reps: [13, 5, 5, 5], rir: 0, daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'hold', kg: 8, aims: [14] });
  });

  it('asks for 23 at 8 kg before 10 kg, where nothing lies between', () => {
    const next = nextTime(raise, [{ kg: 8, reps: [15, 5, 5, 5], rir: 0, daysAgo: 3 }], {
      gear: coarse,
    });
    expect(next).toMatchObject({ move: 'hold', kg: 8, aims: [16] });
    expect(next.prescribed.sets[0]?.range[1]).toBeGreaterThanOrEqual(23);
    expect(next.prescribed.sets[0]?.range[1]).toBeLessThanOrEqual(24);
  });

  it('does not go to and fro between 8 and 10 kg', () => {
    const told = play(
      raise,
      8,
      [15, 15, 15, 15, 15].map((lead) => ({ reps: [lead, 5, 5, 5] })),
      {
        gear: coarse,
      },
    );
    expect(told.map(({ kg }) => kg)).toEqual([8, 8, 8, 8, 8, 8]);
  });

  it('eases when the lead missed the low end twice running', () => {
    const missed = [
      { kg: 10, reps: [12, 4, 4], daysAgo: 9 },
      { kg: 10, reps: [11, 4, 4], daysAgo: 6 },
      { kg: 10, reps: [11, 4, 4], daysAgo: 3 },
    ];
    const next = nextTime(raise, missed, { gear, program: { aim: 'maintain' } });
    expect(next).toMatchObject({ move: 'ease', kg: 9 });
  });

  it('eases after four misses running where the way down is a long one', () => {
    const missed = Array.from({ length: 4 }, () => ({ reps: [11, 4, 4] }));
    const told = play(raise, 10, missed, { gear: coarse, program: { aim: 'maintain' } });
    expect(told.map(({ kg }) => kg)).toEqual([10, 10, 10, 10, 8]);
    expect(told.at(-1)?.words[0]).toBe(
      'Set 1 stopped under 12 reps 4 times running at 10 kg a hand, so down to 8 kg a hand, to build up again.',
    );
  });

  it('cut short by the lifter is as unfinished: neither up nor a miss', () => {
    const next = nextTime(raise, [{ kg: 8, reps: [18, 5], daysAgo: 3, unfinished: true }], {
      gear,
    });
    expect(next).toMatchObject({ move: 'hold', kg: 8 });
    expect(next.rules).toContain('hold-unfinished');
  });

  it('aims the first mini at 3 to 5 reps', () => {
    const minis = (first: number) =>
      nextTime(raise, [{ kg: 8, reps: [14, first, first], daysAgo: 3 }], { gear }).prescribed.minis;
    expect(minis(5)).toEqual({ mostSets: 5, aim: 5 });
    expect(minis(2)).toEqual({ mostSets: 5, aim: 3 });
    expect(minis(9)).toEqual({ mostSets: 5, aim: 5 });
  });
});
