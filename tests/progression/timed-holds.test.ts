import { describe, expect, it, test } from 'vitest';
import { rackFor } from '../../src/progression/rack.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aGear } from './a-gear.ts';
import { plank, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const hold = straight({ lift: plank, range: [30, 60], reserve: [0, 1] });

describe('a timed hold of 30–60 s', () => {
  it('adds five seconds', () => {
    const next = nextTime(hold, [{ kg: 0, reps: [45, 40, 40], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'hold', kg: 0, aims: [50, 40, 40] });
    expect(next.words[0]).toBe('Same body weight: match last time, and hold set 1 for 50 s.');
  });

  it('takes one loadable step when every set reached the high end', () => {
    const next = nextTime(hold, [{ kg: 0, reps: [60, 60, 60], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'up', kg: 1.25, aims: [30, 30, 30] });
  });

  it('aims on to 90 s where no load can be added', () => {
    const gear = aGear({ belt: false });
    const next = nextTime(hold, [{ kg: 0, reps: [60, 60, 60], daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'hold', aims: [65, 60, 60] });
    expect(next.rules).toContain('hold-no-heavier');
    const most = nextTime(hold, [{ kg: 0, reps: [90, 60, 60], daysAgo: 3 }], { gear });
    expect(most.aims).toEqual([90, 60, 60]);
  });

  it('holds after a set under 30 s', () => {
    const next = nextTime(hold, [{ kg: 0, reps: [40, 35, 25], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'hold', aims: [40, 35, 30] });
    expect(next.words[0]).toBe('Set 3 stopped under 30 s: body weight again, and aim at 30 there.');
  });
});

test('no band holds a plank up: a hold is never lighter than the body', () => {
  const held = { loading: 'bodyweight', hands: 2, bodyShare: null, bar: null, step: null } as const;
  const bands = [{ name: 'light', assistance: { amount: 10, unit: 'kg' } }] as const;
  const { loads } = rackFor(held, aGear({ bands }), kilograms(80));
  expect(loads.lightest).toBe(0);
  expect(loads.atOrBelow(kilograms(-10))).toBeNull();
});
