import { describe, expect, it } from 'vitest';
import { lighterWeekOf, lighterWeekProposal } from '../../src/progression/lighter-week.ts';
import type { Decision } from '../../src/progression/past.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aLift, aProgram, cluster, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const row = straight();

const decided = (answer: 'yes' | 'no', daysAgo: number): Decision => {
  const date = TODAY.subtract({ days: daysAgo });
  const at = date.toZonedDateTime('UTC').epochMilliseconds;
  return { rule: 'lighter-week-proposed', answer, subject: null, at, date };
};

const inWeek = { decisions: [decided('yes', 0)] };

describe('a lighter week', () => {
  const done = { kg: 100, reps: [8, 8, 7], daysAgo: 3 };

  it('is half the sets, rounded up, at the same load, two reps fewer', () => {
    const next = nextTime(row, [], { past: aPast([aResult(row, done)], inWeek) });
    expect(next).toMatchObject({
      move: 'hold',
      kg: 100,
      aims: [6, 6],
      rules: ['hold-lighter-week'],
    });
  });

  it('of a cluster is the lead set and one mini-set', () => {
    const raise = cluster();
    const gear = aGear({ dumbbells: dumbbells(8, 10) });
    const past = aPast([aResult(raise, { kg: 8, reps: [14, 5, 5, 5], daysAgo: 3 })], inWeek);
    const next = nextTime(raise, [], { past, gear });
    expect(next).toMatchObject({ move: 'hold', kg: 8, aims: [12] });
    expect(next.prescribed.minis?.mostSets).toBe(2);
  });

  it('moves nothing up, and what was earned before is given after it', () => {
    const earned = aResult(row, { ...done, reps: [8, 8, 8], daysAgo: 9 });
    const easy = aResult(row, { kg: 100, reps: [6, 6], daysAgo: 5, lighter: true });
    expect(nextTime(row, [], { past: aPast([earned], inWeek) })).toMatchObject({ kg: 100 });
    expect(nextTime(row, [], { past: aPast([earned, easy]) })).toMatchObject({
      move: 'up',
      kg: 102.5,
    });
  });

  it('replaces a dropped set in that week', () => {
    const dropped = aResult(row, { ...done, reps: [6, 6], why: ['one-set-fewer'] });
    expect(nextTime(row, [], { past: aPast([dropped], inWeek) }).aims).toHaveLength(2);
  });

  it('still comes back lighter after time away', () => {
    const past = aPast([aResult(row, { ...done, daysAgo: 40 })], inWeek);
    expect(nextTime(row, [], { past })).toMatchObject({ move: 'return', kg: 90 });
  });

  it('runs for seven days from the yes', () => {
    const on = (daysAgo: number) =>
      lighterWeekOf(aPast([], { decisions: [decided('yes', daysAgo)] }), TODAY);
    expect(on(0)).not.toBeNull();
    expect(on(6)).not.toBeNull();
    expect(on(7)).toBeNull();
  });

  it('is one in four weeks, however often it is asked for', () => {
    const past = (first: number) =>
      aPast([], { decisions: [decided('yes', first), decided('yes', 0)] });
    expect(lighterWeekOf(past(27), TODAY)).toBeNull();
    expect(lighterWeekOf(past(28), TODAY)?.toString()).toBe(TODAY.toString());
  });
});

describe('the proposal of a lighter week', () => {
  const lifts = ['row', 'squat', 'press', 'hinge', 'lunge'].map((key) =>
    straight({ lift: aLift({ key }) }),
  );
  const program = aProgram(lifts);
  const slipping = (count: number) =>
    lifts.flatMap((exercise, at) =>
      Array.from({ length: 18 }, (_, nth) => 54 - 3 * nth).map((daysAgo) => {
        const reps = at < count && daysAgo < 30 ? [6, 5, 5] : [8, 8, 7];
        return aResult(exercise, { kg: 100, reps, rir: 1, daysAgo });
      }),
    );
  const proposed = (count: number, decisions: readonly Decision[] = []) =>
    lighterWeekProposal(program, aPast(slipping(count), { decisions }), TODAY);

  it('comes when half of the compounds slip', () => {
    expect(proposed(3)?.facts).toEqual({ slipping: 3, compounds: 5 });
    expect(proposed(2)).toBeNull();
  });

  it('needs two slipping, though the program has only two', () => {
    const two = aProgram(lifts.slice(0, 2));
    expect(lighterWeekProposal(two, aPast(slipping(1)), TODAY)).toBeNull();
    expect(lighterWeekProposal(two, aPast(slipping(2)), TODAY)).not.toBeNull();
  });

  it('comes again at the earliest four weeks after a yes, a week after a no', () => {
    expect(proposed(3, [decided('yes', 27)])).toBeNull();
    expect(proposed(3, [decided('yes', 28)])).not.toBeNull();
    expect(proposed(3, [decided('no', 6)])).toBeNull();
    expect(proposed(3, [decided('no', 7)])).not.toBeNull();
  });

  it('stands among the warnings of the day', () => {
    const [day] = program.days;
    if (!day) throw new Error('A day is missing.');
    const today = prescribe(program, day, aPast(slipping(3)), { today: TODAY, gear: aGear() });
    expect(today.warnings.map(({ rule }) => rule)).toContain('lighter-week-proposed');
    expect(today.lighter).toBe(false);
  });
});
