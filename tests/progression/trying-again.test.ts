import { describe, expect, it } from 'vitest';
import { aGear } from './a-gear.ts';
import { aLift, sideRaise, straight } from './a-program.ts';
import { nextTime, type Played, play } from './next-time.ts';

const maintain = { program: { aim: 'maintain' as const } };

describe('a heavier load that was tried and given up', () => {
  it('is not jumped to again: the way back to it goes over the loads between', () => {
    const sessions: readonly Played[] = [
      { reps: [8, 8, 8], rir: 3 },
      { reps: [4, 4, 4], rir: 1 },
      { reps: [4, 4, 4], rir: 1 },
      { reps: [9, 8, 8], rir: 4 },
    ];
    const told = play(straight({ range: [6, 8] }), 62.5, sessions, maintain);
    expect(told.map(({ move, kg }) => `${move} ${kg}`)).toEqual([
      'start 62.5',
      'up 67.5',
      'hold 67.5',
      'ease 62.5',
      'up 65',
    ]);
  });

  it('counts as a try again when it was kept for long the second time it is given up', () => {
    const kept = (times: number): readonly Played[] => [
      ...Array.from({ length: times }, () => ({ reps: [5, 5, 5] })),
      { reps: [4, 4, 4] },
      { reps: [4, 4, 4] },
    ];
    const told = play(
      straight(),
      100,
      [{ reps: [8, 8, 8] }, ...kept(5), { reps: [8, 8, 8] }, ...kept(5), { reps: [8, 8, 8] }],
      {
        ...maintain,
        gear: aGear({ plates: [{ stamped: { amount: 2.5, unit: 'kg' }, count: 99 }] }),
      },
    );
    const moves = told
      .map(({ move, kg }) => `${move} ${kg}`)
      .filter((each) => !each.includes('hold'));
    expect(moves).toEqual(['start 100', 'up 105', 'ease 95', 'up 100', 'ease 95']);
  });

  it('is not landed on again with the same reps, only with more left, where the step is too large for the range', () => {
    // 5 → 7.5 kg: at 30 reps with one left the estimate gives ten where 14 is the low end.
    const raise = straight({ lift: sideRaise, range: [14, 16], reserve: [0, 1], sets: 1 });
    const gear = aGear({ freeStep: { amount: 2.5, unit: 'kg' } });
    const atFive: Played = { reps: [30], rir: 1 };
    const above: Played = { reps: [6], rir: 0 };
    const told = play(raise, 5, [atFive, above, above, atFive, atFive], { ...maintain, gear });
    expect(told.map(({ move, kg }) => `${move} ${kg}`)).toEqual([
      'start 5',
      'up 7.5',
      'hold 7.5',
      'ease 5',
      'hold 5',
      'hold 5',
    ]);
    const stronger = play(raise, 5, [atFive, above, above, { ...atFive, rir: 4 }], {
      ...maintain,
      gear,
    });
    expect(stronger.at(-1)).toMatchObject({ move: 'up', kg: 7.5 });
  });

  describe('twice', () => {
    const at = (kg: number, reps: readonly number[], daysAgo: number) => ({ kg, reps, daysAgo });
    const givenUpTwice = [
      at(95, [8, 8, 8], 30),
      at(97.5, [4, 4, 4], 27),
      at(97.5, [4, 4, 4], 24),
      { ...at(95, [9, 8, 8], 21), move: 'ease' as const },
      at(97.5, [4, 4, 4], 18),
      at(97.5, [4, 4, 4], 15),
      { ...at(95, [9, 8, 8], 12), move: 'ease' as const },
    ];

    it('is not tried again after one good day, which may be luck, and says so', () => {
      const next = nextTime(straight(), [...givenUpTwice, at(95, [11, 8, 8], 3)], maintain);
      expect(next).toMatchObject({ move: 'hold', kg: 95, aims: [11, 8, 8] });
      expect(next.words).toContain(
        '11 reps at 95 kg may have been a good day, and 97.5 kg was given up before: show it once more.',
      );
    });

    it('is tried again after two such days in a row', () => {
      const next = nextTime(
        straight(),
        [...givenUpTwice, at(95, [11, 8, 8], 6), at(95, [11, 8, 8], 3)],
        maintain,
      );
      expect(next).toMatchObject({ move: 'up', kg: 97.5 });
    });

    it('is not tried again after two with a weaker one between', () => {
      const next = nextTime(
        straight(),
        [...givenUpTwice, at(95, [11, 8, 8], 9), at(95, [10, 8, 8], 6), at(95, [11, 8, 8], 3)],
        maintain,
      );
      expect(next).toMatchObject({ move: 'hold', kg: 95 });
    });
  });
});

describe('a return that lands far too low', () => {
  // Half of 80 kg is moved, and the band takes half of that off.
  const press = straight({
    lift: aLift({ loading: 'bodyweight', kind: 'isolation', bodyShare: 0.5, trains: { chest: 1 } }),
    range: [12, 15],
  });
  const gear = aGear({ bands: [{ name: 'band', assistance: { amount: 20, unit: 'kg' } }] });

  it('goes on to the old load, though more in reserve than can be told says too little', () => {
    const next = nextTime(
      press,
      [
        { kg: 1.25, reps: [13, 13, 13], rir: 1, daysAgo: 45 },
        { kg: -20, reps: [15, 15], rir: 6, daysAgo: 3, move: 'return' },
      ],
      { gear },
    );
    expect(next).toMatchObject({ move: 'up', kg: 0, rules: ['up-after-return'] });
  });
});

it('no band is tied to a lift that moves less than half of the body', () => {
  const crunch = straight({
    lift: aLift({ loading: 'bodyweight', kind: 'isolation', bodyShare: 0.3, trains: { abs: 1 } }),
    range: [12, 15],
  });
  const gear = aGear({ bands: [{ name: 'band', assistance: { amount: 10, unit: 'kg' } }] });
  const next = nextTime(
    crunch,
    [
      { kg: 0, reps: [6, 6, 6], daysAgo: 6 },
      { kg: 0, reps: [6, 6, 6], daysAgo: 3 },
    ],
    { ...maintain, gear },
  );
  expect(next).toMatchObject({ move: 'hold', kg: 0, rules: ['hold-nothing-lighter'] });
});
