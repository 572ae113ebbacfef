import { describe, expect, it } from 'vitest';
import { prescribe } from '../../src/progression/prescribe.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import { aGear } from './a-gear.ts';
import { aPast, aResult, TODAY } from './a-past.ts';
import { aDay, aLift, aProgram, straight } from './a-program.ts';
import { nextTime, play, tellOf } from './next-time.ts';

const row = straight();
const missedTwice = [
  { kg: 100, reps: [5, 5, 5], daysAgo: 9 },
  { kg: 100, reps: [4, 4, 3], daysAgo: 6 },
  { kg: 100, reps: [4, 4, 3], daysAgo: 3 },
];

describe('a set missed twice running', () => {
  it('keeps the load in a cut, with one set fewer: 100 kg × 2 sets', () => {
    const next = nextTime(row, missedTwice);
    expect(next).toMatchObject({ move: 'hold', kg: 100, aims: [5, 5] });
    expect(next.rules).toContain('one-set-fewer');
    expect(next.prescribed.setsPlanned).toBe(3);
  });

  it.each(['maintain', 'build'] as const)('eases the load under the aim %s', (aim) => {
    expect(nextTime(row, missedTwice, { program: { aim } })).toMatchObject({
      move: 'ease',
      kg: 95,
    });
  });

  it('eases the load in a cut where a muscle would fall under 4 hard sets a week', () => {
    // Two sessions a week of 3 sets are 6; with a set fewer in each they are 4: allowed.
    expect(nextTime(row, missedTwice, { program: { daysPerWeek: 2 } }).move).toBe('hold');
    const once = nextTime(row, missedTwice, { program: { daysPerWeek: 1 } });
    expect(once).toMatchObject({ move: 'ease', kg: 95 });
    expect(once.rules).toContain('volume-at-floor');
  });

  it('eases the load where 3 sets on one of two days are 4.5 a week, and a set fewer would be 3', () => {
    const squat = straight({ lift: aLift({ key: 'squat', trains: { quads: 1 } }) });
    const days = [aDay('A', row), aDay('B', squat)];
    const next = nextTime(row, missedTwice, { program: { days, daysPerWeek: 3 } });
    expect(next).toMatchObject({ move: 'ease', kg: 95 });
  });

  it('counts only direct muscles towards that floor', () => {
    // Biceps get half a set each; 3 × 2 sets of a row leave them 3 a week, and hinder nothing.
    expect(nextTime(row, missedTwice).rules).toContain('one-set-fewer');
  });

  it('eases the load when a set fewer was tried at it already', () => {
    const next = nextTime(row, [
      { kg: 100, reps: [5, 5, 5], daysAgo: 12 },
      { kg: 100, reps: [4, 4, 3], daysAgo: 9 },
      { kg: 100, reps: [4, 4, 3], daysAgo: 6 },
      { kg: 100, reps: [4, 4], daysAgo: 3, why: ['hold-missed', 'one-set-fewer'] },
    ]);
    expect(next).toMatchObject({ move: 'ease', kg: 95 });
  });

  it('counts a set that another lift of the same day drops towards that floor', () => {
    const other = straight({ lift: aLift({ key: 'other-row' }) });
    const squat = straight({ lift: aLift({ key: 'squat', trains: { quads: 1 } }) });
    // Six sets every five days of training, four days a week: 4.8 a week, 4 without one set, 3.2 without two.
    const days = [aDay('A', row, other), ...['B', 'C', 'D', 'E'].map((name) => aDay(name, squat))];
    const program = aProgram([row, other], { days, daysPerWeek: 4 });
    const setsAsked = (first: typeof missedTwice) => {
      const results = [
        ...first.map((session) => aResult(row, session)),
        ...missedTwice.map((session) => aResult(other, session)),
      ].sort((a, b) => a.start - b.start);
      const { exercises } = prescribe(program, days[0]!, aPast(results), {
        today: TODAY,
        gear: aGear(),
      });
      return exercises.map((each) => tellOf(each).aims.length);
    };
    expect(setsAsked(missedTwice)).toEqual([2, 3]);
    expect(setsAsked(missedTwice.map((each) => ({ ...each, reps: [6, 6, 6] })))).toEqual([3, 2]);
  });

  it('never leaves fewer than two sets', () => {
    const two = straight({ sets: 2 });
    const next = nextTime(
      two,
      missedTwice.map((each) => ({ ...each, reps: each.reps.slice(0, 2) })),
      { program: { daysPerWeek: 4 } },
    );
    expect(next).toMatchObject({ move: 'ease', kg: 95 });
    expect(next.aims).toHaveLength(2);
  });
});

describe('the answer to a set fewer', () => {
  const answered = (answer: 'yes' | 'no', ago: number, sessions = missedTwice) => {
    const results = sessions.map((each) => aResult(row, each));
    const subject = results[0]?.exercise.track ?? null;
    const date = TODAY.subtract({ days: ago });
    return nextTime(row, sessions, {
      past: aPast(results, { decisions: [{ rule: 'do-less', answer, subject, at: 0, date }] }),
    });
  };

  it('is taken: a no keeps the sets and eases the load, for three weeks', () => {
    expect(answered('no', 20)).toMatchObject({ move: 'ease', kg: 95 });
    expect(answered('no', 20).aims).toHaveLength(3);
    expect(answered('no', 20).rules).not.toContain('volume-at-floor');
    expect(answered('no', 21).rules).toContain('one-set-fewer');
    expect(answered('yes', 1).rules).toContain('one-set-fewer');
  });

  it('brings a set back that is dropped already', () => {
    const dropped = [
      ...missedTwice,
      { kg: 100, reps: [5, 5], daysAgo: 2, planned: 3, why: ['hold-missed', 'one-set-fewer'] },
    ];
    expect(answered('yes', 1, dropped).aims).toHaveLength(2);
    expect(answered('no', 1, dropped).aims).toHaveLength(3);
  });
});

describe('a dropped set', () => {
  const told = play(row, 100, [
    { reps: [5, 5, 5] },
    { reps: [4, 4, 3] },
    { reps: [4, 4, 3] },
    { reps: [5, 5] },
    { reps: [5, 5] },
    { reps: [5, 5] },
  ]);

  it('stays for three steady sessions, never stacks, and comes back', () => {
    expect(told.map(({ aims }) => aims.length)).toEqual([3, 3, 3, 2, 2, 2, 3]);
    expect(told.at(-1)?.rules).toContain('set-comes-back');
  });

  it('stays while set 1 still misses now and then', () => {
    const dropped = [
      [5, 5],
      [4, 4],
      [5, 5],
    ].map((reps, at) => {
      return { kg: 100, reps, daysAgo: 9 - 3 * at, why: ['one-set-fewer'] };
    });
    expect(nextTime(row, dropped).aims).toHaveLength(2);
  });

  it('comes back when the cut is over', () => {
    const after = nextTime(row, [{ kg: 100, reps: [5, 5], daysAgo: 3, why: ['one-set-fewer'] }], {
      program: { aim: 'maintain' },
    });
    expect(after.aims).toHaveLength(3);
    expect(after.rules).toContain('set-comes-back');
  });

  it('is not the second one of a lift within 14 days', () => {
    const heavy = straight({ range: [3, 5] });
    const results = [
      ...missedTwice.map((each) => aResult(row, each)),
      aResult(heavy, { kg: 120, reps: [3, 3], daysAgo: 8, why: ['one-set-fewer'] }),
    ];
    const program = aProgram([row, heavy]);
    const next = tellOf(
      prescribeExercise(program, row, aPast(results), { today: TODAY, gear: aGear() }),
    );
    expect(next.move).toBe('ease');
  });
});

describe('what holding means', () => {
  const held = [{ kg: 100, reps: [6, 6, 6], rir: 1, daysAgo: 3 }];

  it('is success in a cut', () => {
    expect(nextTime(row, held).words).toContain(
      'In a cut the same load and reps count as success.',
    );
  });

  it('is the plan in maintenance', () => {
    expect(nextTime(row, held, { program: { aim: 'maintain' } }).rules).toContain(
      'holding-maintains',
    );
  });

  it('is a stall in a build after four sessions without a rep more', () => {
    const four = [12, 9, 6, 3].map((daysAgo) => ({ kg: 100, reps: [6, 6, 6], rir: 1, daysAgo }));
    const build = { program: { aim: 'build' as const } };
    expect(nextTime(row, four, build).rules).toContain('holding-builds');
    expect(nextTime(row, four.slice(1), build).rules).not.toContain('holding-builds');
    // Counted from the session that first reached as many.
    const rising = [
      [5, 5, 5],
      [6, 6, 6],
      [6, 6, 6],
      [6, 6, 6],
    ].map((reps, at) => ({
      kg: 100,
      reps,
      rir: 1,
      daysAgo: 12 - 3 * at,
    }));
    expect(nextTime(row, rising, build).rules).not.toContain('holding-builds');
  });
});

describe('a barbell bench press or squat without safeties', () => {
  const bench = straight({ lift: aLift({ pattern: 'horizontal-push' }), reserve: [0, 0] });
  const squat = straight({ lift: aLift({ pattern: 'squat' }), reserve: [0, 1] });
  const done = [{ kg: 100, reps: [6, 6, 6], daysAgo: 3 }];

  it('keeps one rep in reserve whatever the program says', () => {
    const gear = aGear({ safeties: false });
    expect(nextTime(bench, done, { gear }).prescribed.reserve).toEqual([1, 1]);
    expect(nextTime(squat, done, { gear }).prescribed.reserve).toEqual([1, 1]);
    expect(nextTime(bench, done, { gear }).rules).toContain('reserve-without-safeties');
  });

  it('goes by the program where safeties catch the bar, and with dumbbells', () => {
    expect(nextTime(bench, done).prescribed.reserve).toEqual([0, 0]);
    const press = straight({
      lift: aLift({ pattern: 'horizontal-push', loading: 'dumbbell' }),
      reserve: [0, 1],
    });
    expect(nextTime(press, [], { gear: aGear({ safeties: false }) }).prescribed.reserve).toEqual([
      0, 1,
    ]);
  });
});
