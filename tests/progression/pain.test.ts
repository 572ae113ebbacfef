import { describe, expect, it } from 'vitest';
import type { Decision } from '../../src/progression/past.ts';
import { prescribe } from '../../src/progression/prescribe.ts';
import { prescribeExercise } from '../../src/progression/prescribe-exercise.ts';
import { aGear, dumbbells } from './a-gear.ts';
import { aPast, aResult, TODAY, trained } from './a-past.ts';
import { aLift, aProgram, straight } from './a-program.ts';
import { nextTime, tellOf } from './next-time.ts';

const row = straight();
const hurt = [{ kg: 100, reps: [8, 8, 8], daysAgo: 3, pain: true }];

function answered(answer: Decision['answer']) {
  const decision = { rule: 'pain-asked', answer, subject: 'row', at: 0, date: TODAY };
  return aPast(trained(row, ...hurt), { decisions: [decision] });
}

describe('pain', () => {
  it('is asked about first, and the load is 80 % at most until it is answered', () => {
    const next = nextTime(row, hurt);
    expect(next).toMatchObject({ move: 'ease', kg: 80, rules: ['pain-asked'] });
    expect(next.prescribed.askPain).toBe(true);
  });

  it('counts too when it stopped the lift before its first set', () => {
    const fine = { kg: 100, reps: [8, 8, 8], daysAgo: 6 };
    const next = nextTime(row, [fine, { kg: 100, reps: [], daysAgo: 3, pain: true }]);
    expect(next).toMatchObject({ move: 'ease', rules: ['pain-asked'] });
    const again = nextTime(row, [...hurt, { kg: 80, reps: [], daysAgo: 1, pain: true }]);
    expect(again.rules).toEqual(['pain-twice']);
  });

  it('leaves the load that was taken as an easier one, where that was done to the end', () => {
    const eased = { ...hurt[0]!, kg: 80, move: 'ease' as const, why: ['pain-lighter'] };
    const before = { kg: 100, reps: [8, 8, 8], daysAgo: 6 };
    const next = nextTime(row, [before, eased]);
    expect(next).toMatchObject({ move: 'hold', kg: 80, rules: ['pain-eased'] });
    expect(next.prescribed.askPain).toBe(true);
    // Where that hurt, too, it is no load to go on with; nor where it was marked the time before.
    const cut = nextTime(row, [before, { ...eased, unfinished: true }]);
    expect(cut).toMatchObject({ move: 'ease', rules: ['pain-asked'] });
    const twice = nextTime(row, [{ ...before, pain: true }, eased]);
    expect(twice).toMatchObject({ move: 'ease', rules: ['pain-twice'] });
    // Without pain it goes back up to where it came from.
    const well = { kg: 80, reps: [8, 8, 8], rir: 4, daysAgo: 1, why: ['pain-eased'] };
    expect(nextTime(row, [before, { ...eased, daysAgo: 4 }, well])).toMatchObject({
      move: 'up',
      kg: 87.5,
      rules: ['up-after-return'],
    });
  });

  it('is no ease where nothing lighter can be made, and that is said', () => {
    const bare = { ...hurt[0]!, kg: 20 };
    const next = nextTime(row, [bare]);
    expect(next).toMatchObject({ move: 'hold', kg: 20, rules: ['pain-asked'] });
    expect(next.words[0]).toContain('nothing lighter');
  });

  it('says so where the gear of today makes only more', () => {
    const press = straight({ lift: aLift({ loading: 'dumbbell' }) });
    const next = nextTime(press, [{ ...hurt[0]!, kg: 4 }], {
      gear: aGear({ dumbbells: dumbbells(8) }),
    });
    expect(next).toMatchObject({ kg: 8, rules: ['pain-asked', 'gear-changed'] });
    expect(next.words[1]).toBe('4 kg a hand cannot be made with your gear: 8 kg a hand instead.');
  });

  it('never earns more load, though the lifter says that it is gone', () => {
    const next = nextTime(row, hurt, { past: answered('go-on') });
    expect(next).toMatchObject({ move: 'hold', kg: 100 });
    expect(next.rules).toContain('pain-gone');
    expect(next.prescribed.askPain).toBe(false);
  });

  it('leaves the lift out where the lifter says so', () => {
    const program = aProgram([row]);
    const [day] = program.days;
    if (!day) throw new Error('A day is missing.');
    const today = prescribe(program, day, answered('leave-out'), { today: TODAY, gear: aGear() });
    expect(today.exercises).toEqual([]);
    expect(today.warnings.map(({ rule }) => rule)).toEqual(['left-out-for-pain']);
  });

  it('twice running means leaving it out, and having it looked at', () => {
    const next = nextTime(row, [
      { kg: 100, reps: [8], daysAgo: 6, pain: true, unfinished: true },
      {
        kg: 80,
        reps: [8],
        daysAgo: 3,
        pain: true,
        unfinished: true,
        move: 'ease',
        why: ['pain-asked'],
      },
    ]);
    expect(next.rules).toEqual(['pain-twice']);
    expect(next.words[0]).toMatch(/have it looked at/);
  });

  it('comes back as after a layoff: up by 10 % at most, to the old load', () => {
    const next = nextTime(row, [
      ...hurt.map((each) => ({ ...each, daysAgo: 6 })),
      { kg: 80, reps: [8, 8, 8], rir: 4, daysAgo: 3, move: 'ease', why: ['pain-asked'] },
    ]);
    expect(next).toMatchObject({ move: 'up', kg: 87.5, rules: ['up-after-return'] });
  });

  it('in the middle of a session gives an easier load of the same lift on demand', () => {
    const past = aPast([aResult(row, { kg: 100, reps: [6, 6, 6], daysAgo: 3 })]);
    const easier = tellOf(
      prescribeExercise(
        aProgram([row]),
        row,
        past,
        { today: TODAY, gear: aGear() },
        { change: { kind: 'lighter' } },
      ),
    );
    expect(easier).toMatchObject({ move: 'ease', kg: 80, rules: ['pain-lighter'] });
  });
});
