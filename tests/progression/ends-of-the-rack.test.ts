import { describe, expect, it } from 'vitest';
import { aGear, dumbbells } from './a-gear.ts';
import { aLift, pullUp, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const press = straight({ lift: aLift({ loading: 'dumbbell' }), range: [8, 12] });

describe('at the heaviest load', () => {
  const gear = aGear({ dumbbells: dumbbells(20, 22, 24) });

  it('set 1 aims on, and the way out is named', () => {
    const next = nextTime(press, [{ kg: 24, reps: [12, 12, 12], daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'hold', kg: 24, aims: [13, 12, 12] });
    expect(next.words).toContain(
      '24 kg a hand is the heaviest you can make: go on to 20 reps in set 1, then more weight or a harder lift is needed.',
    );
  });

  it('20 reps are the end', () => {
    const next = nextTime(press, [{ kg: 24, reps: [20, 12, 12], daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'hold', kg: 24, aims: [20, 12, 12] });
  });
});

describe('where the next lighter load is a long way down', () => {
  const gear = aGear({ dumbbells: dumbbells(10, 12, 14, 16) });
  const rows = straight({ lift: aLift({ loading: 'dumbbell' }), range: [10, 12] });
  const twice = (reps: number) => [
    { kg: 14, reps: [10, 10, 10], daysAgo: 9 },
    { kg: 14, reps: [reps, reps, reps], daysAgo: 6 },
    { kg: 14, reps: [reps, reps, reps], daysAgo: 3 },
  ];
  const maintain = { gear, program: { aim: 'maintain' as const } };

  it('one rep missing does not ease 14 kg to 12', () => {
    expect(nextTime(rows, twice(9), maintain)).toMatchObject({ move: 'hold', kg: 14 });
  });

  it('under seven tenths of the low end it does', () => {
    expect(nextTime(rows, twice(6), maintain)).toMatchObject({ move: 'ease', kg: 12 });
  });
});

describe('at the lightest load', () => {
  it('the empty bar stays, aims are what was done, and ways on are named', () => {
    const next = nextTime(
      straight(),
      [
        { kg: 20, reps: [3, 3, 2], daysAgo: 6 },
        { kg: 20, reps: [3, 3, 2], daysAgo: 3 },
      ],
      { program: { aim: 'maintain' } },
    );
    expect(next).toMatchObject({
      move: 'hold',
      kg: 20,
      aims: [3, 3, 2],
      rules: ['hold-nothing-lighter'],
    });
    expect(next.prescribed.sets[0]?.range[0]).toBe(3);
  });

  it('pull-ups without bands or a belt stay at body weight', () => {
    const next = nextTime(
      straight({ lift: pullUp }),
      [
        { kg: 0, reps: [3, 2, 2], daysAgo: 6 },
        { kg: 0, reps: [3, 2, 2], daysAgo: 3 },
      ],
      { program: { aim: 'maintain' } },
    );
    expect(next).toMatchObject({ move: 'hold', kg: 0, aims: [3, 2, 2] });
  });
});

describe('gear that was sold', () => {
  it('gives the nearest load below, and says so', () => {
    const next = nextTime(press, [{ kg: 24, reps: [9, 9, 9], daysAgo: 3 }], {
      gear: aGear({ dumbbells: dumbbells(18, 22) }),
    });
    expect(next).toMatchObject({ move: 'hold', kg: 22 });
    expect(next.words).toEqual([
      '24 kg a hand cannot be made with your gear: 22 kg a hand instead.',
    ]);
  });

  it.each([
    ['a set that missed', { reps: [9, 9, 6] }],
    ['a set that was not finished', { reps: [9, 9], unfinished: true }],
    ['reps on the way to a load far off', { reps: [12, 12, 12], rir: 0 }],
  ])('says nothing of keeping what is sold, after %s', (_, done) => {
    const next = nextTime(press, [{ kg: 24, daysAgo: 3, ...done }], {
      gear: aGear({ dumbbells: dumbbells(18, 22, 40) }),
    });
    expect(next).toMatchObject({ kg: 22, rules: ['gear-changed'] });
  });

  it('asks after pain with the load that can be made', () => {
    const next = nextTime(press, [{ kg: 24, reps: [9, 9, 9], daysAgo: 3, pain: true }], {
      gear: aGear({ dumbbells: dumbbells(23) }),
    });
    expect(next.words).toEqual([
      'Pain was marked last time at 24 kg a hand. If it is gone, 23 kg a hand today; or another lift, or leave it out.',
    ]);
  });

  it('comes back from time away with what can be made, and not with the same again', () => {
    const next = nextTime(press, [{ kg: 24, reps: [9, 9, 9], daysAgo: 16 }], {
      gear: aGear({ dumbbells: dumbbells(18, 23) }),
    });
    expect(next.words).toEqual([
      '16 days away from this lift: 23 kg a hand instead of 24 kg a hand.',
    ]);
  });
});
