import { describe, expect, it } from 'vitest';
import { aGear, dumbbells } from './a-gear.ts';
import { aLift, straight } from './a-program.ts';
import { nextTime } from './next-time.ts';

const press = straight({ lift: aLift({ loading: 'dumbbell' }), range: [8, 10] });

const home = aGear({ dumbbells: dumbbells(10, 12, 14, 16, 18, 20, 22, 24) });
const hotel = aGear({ dumbbells: dumbbells(6, 10, 14) });

const AT_HOME = { kg: 22, reps: [10, 9, 8], rir: 1, daysAgo: 9 } as const;
const AT_THE_HOTEL = { kg: 14, reps: [20, 20, 18], rir: 2, why: ['gear-light'] } as const;

describe('gear of another place that makes far less', () => {
  it('asks for the reps that are as hard there, and says why', () => {
    const next = nextTime(press, [AT_HOME], { gear: hotel });
    expect(next).toMatchObject({ move: 'ease', kg: 14, aims: [20, 20, 20] });
    expect(next.words).toEqual([
      "22 kg a hand cannot be made with today's gear: 14 kg a hand for more reps, and from 22 kg a hand on where that can be made.",
    ]);
    const near = nextTime(press, [{ ...AT_HOME, kg: 18, reps: [8, 8, 8] }], { gear: hotel });
    // 9 reps to failure at 18 kg: 18 × 36 ÷ 28 = 23.1 (Brzycki); 30 × (23.1 ÷ 14 − 1) = 19.6 (Epley), 1.5 left.
    expect(near.aims).toEqual([18, 18, 18]);
  });

  it('says nothing of it where the next load below is near', () => {
    const gear = aGear({ dumbbells: dumbbells(21) });
    expect(nextTime(press, [AT_HOME], { gear }).rules).not.toContain('gear-light');
  });

  it('teaches nothing of what is lifted at home: that goes on from the last time there', () => {
    const alone = nextTime(press, [AT_HOME], { gear: home });
    const after = nextTime(press, [AT_HOME, { ...AT_THE_HOTEL, daysAgo: 3 }], { gear: home });
    expect([after.kg, after.aims, after.rules]).toEqual([alone.kg, alone.aims, alone.rules]);
  });

  it('nor do the days there that followed', () => {
    const days = [7, 5, 3].map((daysAgo, at) => ({
      ...AT_THE_HOTEL,
      daysAgo,
      why: at === 0 ? AT_THE_HOTEL.why : ['hold-match'],
    }));
    const next = nextTime(press, [AT_HOME, ...days], { gear: home });
    expect(next).toMatchObject({ kg: 22 });
  });

  it('goes on from there while one is there', () => {
    const next = nextTime(press, [AT_HOME, { ...AT_THE_HOTEL, daysAgo: 3 }], { gear: hotel });
    expect(next).toMatchObject({ kg: 14 });
    expect(next.rules).not.toContain('gear-light');
  });

  it('a heavier session ends it: what came since counts', () => {
    const next = nextTime(
      press,
      [
        AT_HOME,
        { ...AT_THE_HOTEL, daysAgo: 7 },
        { kg: 20, reps: [10, 10, 10], rir: 1, daysAgo: 3 },
      ],
      { gear: home },
    );
    expect(next).toMatchObject({ kg: 20 });
  });
});
