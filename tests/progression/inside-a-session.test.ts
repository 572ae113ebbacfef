import { describe, expect, it } from 'vitest';
import { offerAfterSet } from '../../src/progression/offer-after-set.ts';
import type { SetResult } from '../../src/progression/past.ts';
import { inUnit, kilograms } from '../../src/training/mass.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aLift, cluster, straight } from './a-program.ts';
import { nextTime, type Told } from './next-time.ts';

const done = (kg: number, count: number, reserve: number | null = null): SetResult => ({
  id: 'made:1',
  load: kilograms(kg),
  count,
  reserve,
  entered: 'typed',
});

function offered({ prescribed }: Told, ...sets: readonly SetResult[]) {
  const offer = offerAfterSet(prescribed, sets, aGear(), kilograms(80));
  return offer && { kg: inUnit(offer.load, 'kg'), rule: offer.reason.rule };
}

const row = straight();
const known = nextTime(row, [{ kg: 100, reps: [6, 6, 6], daysAgo: 3 }]);
const first = nextTime(straight({ start: kilograms(80) }), []);

describe('after a set', () => {
  it('below the low end, a lighter load is offered: 100 × 4 with nothing left', () => {
    // Brzycki: 100 × 4 is a best of 109.1 kg; 6.5 reps with 1.5 left are 88 kg, 87.5 can be loaded.
    expect(offered(known, done(100, 4, 0))).toEqual({ kg: 87.5, rule: 'offer-lighter' });
  });

  it('inside the range nothing is offered', () => {
    expect(offered(known, done(100, 5, 0))).toBeNull();
  });

  it('in a first session a set more is offered where none is left and it was far too light', () => {
    const light = nextTime(straight({ start: kilograms(40) }), []);
    const sets = [done(40, 8, 5), done(50, 8, 5), done(62.5, 8, 5)];
    expect(offered(light, ...sets)).toMatchObject({ rule: 'offer-heavier' });
    expect(offered(light, ...sets, ...sets, ...sets)).toBeNull();
  });

  it('nothing is offered when no set is left', () => {
    expect(offered(known, done(100, 6), done(100, 5), done(100, 4))).toBeNull();
  });

  it('in a first session a load far too heavy is mended at once: 80 × 3 with nothing left', () => {
    expect(offered(first, done(80, 3, 0))).toMatchObject({ rule: 'offer-lighter' });
  });

  it('in a first session a load far too light goes up by at most a quarter a set', () => {
    const light = nextTime(straight({ start: kilograms(40) }), []);
    expect(offered(light, done(40, 8, 4))).toEqual({ kg: 45, rule: 'offer-heavier' });
    // Five and more are not told apart: a whole quarter.
    expect(offered(light, done(40, 8, 5))).toEqual({ kg: 50, rule: 'offer-heavier' });
    const light100 = nextTime(straight({ start: kilograms(100) }), []);
    expect(offered(light100, done(100, 11))).toEqual({ kg: 112.5, rule: 'offer-heavier' });
    expect(offered(light, done(40, 20, 5))).toEqual({ kg: 50, rule: 'offer-heavier' });
  });

  it('in a first session nothing heavier is offered where the next load would be too heavy', () => {
    // 10 × 8 with 4 left points to 11.3 kg for the middle of the range; the next pair is 14.
    const press = straight({ lift: aLift({ loading: 'dumbbell' }), start: kilograms(10) });
    const gear = aGear({ dumbbells: dumbbells(10, 14) });
    const { prescribed } = nextTime(press, [], { gear });
    expect(offerAfterSet(prescribed, [done(10, 8, 4)], gear, null)).toBeNull();
  });

  it('only a first session goes up inside itself', () => {
    expect(offered(known, done(100, 8, 5))).toBeNull();
  });

  it('a cluster keeps its load', () => {
    const raise = nextTime(cluster({ start: kilograms(8) }), []);
    expect(offered(raise, done(8, 6, 0))).toBeNull();
  });
});

describe('a session at several loads', () => {
  it('is judged at set 1: 100 × 4, 95 × 6, 95 × 6 is a miss at 100', () => {
    const next = nextTime(row, [{ kg: [100, 95, 95], reps: [4, 6, 6], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'hold', kg: 100, rules: ['hold-missed'] });
  });

  it('never earns more load', () => {
    const next = nextTime(row, [{ kg: [100, 95, 95], reps: [8, 8, 8], daysAgo: 3 }]);
    expect(next).toMatchObject({ move: 'hold', kg: 100 });
    expect(next.rules).toContain('hold-mixed-loads');
  });

  it('that was the first is judged at its last load', () => {
    const next = nextTime(row, [{ kg: [80, 70, 70], reps: [3, 6, 6], daysAgo: 3, move: 'start' }]);
    expect(next).toMatchObject({ move: 'hold', kg: 70 });
  });
});
