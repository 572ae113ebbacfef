import { describe, expect, it } from 'vitest';
import { aGear } from './a-gear.ts';
import { aLift, straight } from './a-program.ts';
import { nextTime, play } from './next-time.ts';

/** Singles on a stack of 5 kg steps. */
const singles = (range: readonly [number, number] = [1, 1]) =>
  straight({ lift: aLift({ loading: 'stack' }), range, sets: 2 });
const kg = (amount: number) => ({ amount, unit: 'kg' as const });
const gear = aGear({ stacks: [{ name: 'stack', lowest: kg(5), step: kg(5), highest: kg(100) }] });

describe('a plan of singles', () => {
  it('asks for no second rep, and says what has to be left before the next load', () => {
    // By Brzycki's line 3 to failure at 75 kg are 79.4 kg, not one rep at 80 kg; 5 to failure are
    // 84.4 kg, of which one rep at 80 kg leaves 1.9.
    const next = nextTime(singles(), [{ kg: 75, reps: [1, 1], rir: 2, daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'hold', kg: 75, aims: [1, 1] });
    expect(next.prescribed.sets.map(({ range }) => range)).toEqual([
      [1, 1],
      [1, 1],
    ]);
    expect(next.words).toContain(
      '80 kg on the stack, 7 % more, is next once set 1 leaves 4 in reserve after 1 rep.',
    );
  });

  it('goes up by the step once the effort told allows it', () => {
    const next = nextTime(singles(), [{ kg: 75, reps: [1, 1], rir: 5, daysAgo: 3 }], { gear });
    expect(next).toMatchObject({ move: 'up', kg: 80, aims: [1, 1] });
  });

  it('says that the next load is out of reach where no reserve that can be told opens it', () => {
    const next = nextTime(singles(), [{ kg: 20, reps: [1, 1], rir: 2, daysAgo: 3 }], { gear });
    expect(next.aims).toEqual([1, 1]);
    expect(next.words).toContain(
      '25 kg on the stack, 25 % more, is out of reach even from 1 rep at 20 kg on the stack: smaller plates or a band would close the gap.',
    );
  });

  it.each([
    [[1, 1], 1],
    [[3, 3], 3],
    [[1, 3], 3],
    [[5, 5], 5],
  ] as const)('of %j goes up by a small step once all that was planned is left', (range, count) => {
    // 1 with 2 left are 3 to failure, 100.6 kg by Brzycki's line; at 97.5 kg that is one with 1.1 left.
    const bar = straight({ range, sets: 2 });
    const done = { kg: 95, reps: [count, count], daysAgo: 3 };
    expect(nextTime(bar, [{ ...done, rir: 2 }])).toMatchObject({ move: 'up', kg: 97.5 });
    const hard = nextTime(bar, [{ ...done, rir: 1 }]);
    expect(hard).toMatchObject({ move: range[0] < range[1] ? 'up' : 'hold' });
  });

  it('is told of no stall in reps where no rep more is asked', () => {
    const sessions = Array.from({ length: 6 }, () => ({ reps: [1, 1], rir: 1 }));
    const told = play(singles(), 75, sessions, { gear, program: { aim: 'build' } });
    expect(told.at(-1)).toMatchObject({ kg: 75, aims: [1, 1] });
    expect(told.flatMap(({ rules }) => rules)).not.toContain('holding-builds');
  });

  it('never lands on a load at which not one whole rep is likely', () => {
    const sessions = Array.from({ length: 12 }, () => ({ reps: [1, 1], rir: 1 }));
    const told = play(singles(), 75, sessions, { gear });
    expect(new Set(told.map(({ kg }) => kg))).toEqual(new Set([75]));
    expect(told.every(({ aims }) => aims.every((aim) => aim === 1))).toBe(true);
  });

  it('asks for more in reserve after a try that failed, not for more reps', () => {
    const sessions = [
      { reps: [1, 1], rir: 5 },
      { reps: [0, 0], rir: 0 },
    ];
    const told = play(singles(), 75, sessions, { gear, program: { aim: 'maintain' } });
    expect(told.map(({ move, kg }) => `${move} ${kg}`)).toEqual(['start 75', 'up 80', 'ease 75']);
    expect(told.at(-1)).toMatchObject({ aims: [1, 1], rules: ['ease-back'] });
    expect(told.at(-1)?.words[0]).toBe(
      '80 kg on the stack never gave 1 rep, so back to 75 kg on the stack. Leave 5 in reserve in set 1 before 80 kg on the stack is tried again.',
    );
  });

  it('is asked for no fourth rep of triples', () => {
    const next = nextTime(singles([2, 3]), [{ kg: 75, reps: [3, 3], rir: 1, daysAgo: 3 }], {
      gear,
    });
    expect(next).toMatchObject({ kg: 75, aims: [3, 3] });
  });

  it.each([
    [[1, 1], 1],
    [[1, 3], 1],
    [[3, 3], 3],
    [[5, 8], 5],
  ] as const)(
    'of %j that leaves nothing at its low end is eased at the second time',
    (range, reps) => {
      const sessions = [6, 3].map((daysAgo) => ({ kg: 75, reps: [reps, reps], rir: 0, daysAgo }));
      const [once, twice] = [1, 2].map((count) =>
        nextTime(singles(range), sessions.slice(-count), { gear }),
      );
      const counted = reps === 1 ? '1 rep' : `${reps} reps`;
      expect(once).toMatchObject({ move: 'hold', kg: 75, aims: [reps, reps] });
      expect(once?.words[0]).toBe(
        `Set 1 ended with 0 in reserve where 1 should be left, and your range holds no fewer than ${counted}: same 75 kg on the stack once more, and less if it is as hard again.`,
      );
      expect(twice).toMatchObject({ move: 'ease', kg: 70, rules: ['ease-spent'] });
      expect(twice?.words).toEqual([
        `${counted} at 75 kg on the stack left less than 1 in reserve twice running, and your range holds no fewer: down to 70 kg on the stack, to build up again.`,
      ]);
    },
  );

  it('waits four times to be eased where the next lighter load is a long way down', () => {
    const sessions = Array.from({ length: 4 }, () => ({ reps: [1, 1], rir: 0 }));
    const told = play(singles(), 20, sessions, { gear });
    expect(told.map(({ kg }) => kg)).toEqual([20, 20, 20, 20, 15]);
    expect(told[1]?.words[0]).toMatch(/same 20 kg on the stack once more\.$/);
    expect(told.at(-1)?.words[0]).toContain('less than 1 in reserve 4 times running');
  });

  it('of which all but the first fail in a cut does a set fewer, then less load', () => {
    const sessions = Array.from({ length: 5 }, () => ({ reps: [1, 0, 0], rir: 1 }));
    const told = play({ ...singles(), sets: 3 }, 75, sessions, { gear });
    expect(told.map(({ kg, aims }) => `${kg} × ${aims.length}`)).toEqual([
      '75 × 3',
      '75 × 3',
      '75 × 3',
      '75 × 2',
      '70 × 2',
      '70 × 2',
    ]);
  });
});
