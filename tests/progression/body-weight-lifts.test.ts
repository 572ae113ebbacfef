import { describe, expect, it } from 'vitest';
import { inUnit } from '../../src/training/mass.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { pullUp, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const pullUps = straight({ lift: pullUp, range: [8, 12] });
const kilos = (then: number, now: number) => (date: typeof TODAY) =>
  date.until(TODAY, { largestUnit: 'days' }).days > 10 ? then : now;

describe('a body weight lift', () => {
  it('holds its setting while body weight falls: 80.0 then, 79.4 now', () => {
    const results = [aResult(pullUps, { kg: 0, reps: [10, 9, 8], daysAgo: 12 })];
    const next = nextTime(pullUps, [], { past: aPast(results, { body: kilos(80, 79.4) }) });
    expect(next).toMatchObject({ move: 'hold', kg: 0, aims: [11, 9, 8] });
    expect(inUnit(next.prescribed.system ?? (0 as never), 'kg')).toBe(79.4);
  });

  it('goes up by a share of what is really lifted: +1.25 on 80 kg is 1.6 %', () => {
    const results = [aResult(pullUps, { kg: 0, reps: [12, 12, 12], daysAgo: 3 })];
    const next = nextTime(pullUps, [], { past: aPast(results, { body: 80 }) });
    expect(next).toMatchObject({ move: 'up', kg: 1.25 });
    expect(next.words[0]).toBe(
      'Every set reached 12 at body weight, so on to body weight + 1.25 kg.',
    );
  });

  it('is missed twice at one setting although body weight differed', () => {
    const results = [
      aResult(pullUps, { kg: 10, reps: [9, 8, 8], daysAgo: 20 }),
      aResult(pullUps, { kg: 10, reps: [7, 7, 7], daysAgo: 12 }),
      aResult(pullUps, { kg: 10, reps: [7, 7, 7], daysAgo: 3 }),
    ];
    const past = aPast(results, { body: kilos(81, 80) });
    // 95 % of 90 kg is 85.5: +5.5, so +5 kg.
    expect(nextTime(pullUps, [], { past, program: { aim: 'maintain' } })).toMatchObject({
      move: 'ease',
      kg: 5,
    });
  });

  it('says that the same reps are less work: 10 pull-ups at 85 kg are 12 or 13 at 80 kg', () => {
    const results = [
      aResult(pullUps, { kg: 0, reps: [10, 9, 8], rir: 1, daysAgo: 40 }),
      aResult(pullUps, { kg: 0, reps: [10, 9, 8], rir: 1, daysAgo: 3 }),
    ];
    const next = nextTime(pullUps, [], { past: aPast(results, { body: kilos(85, 80) }) });
    expect(next.words).toContain(
      'You are 5 kg lighter, so the same reps are now 6 % less work; about 13 would be full strength.',
    );
    expect(next.rules).not.toContain('holding-wins');
  });

  it('moves on reps and setting alone before the first weigh-in, by steps up to 5 kg', () => {
    const results = [aResult(pullUps, { kg: 0, reps: [12, 12, 12], daysAgo: 3 })];
    const next = nextTime(pullUps, [], { past: aPast(results, { body: null }) });
    expect(next).toMatchObject({ move: 'up', kg: 1.25 });
    expect(next.rules).toContain('weigh-in-missing');
    expect(next.prescribed.system).toBeNull();
  });
});
