import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  estimateStrength,
  estimateStrengthOver,
  levelsOver,
  oddsOfLoss,
  type SessionSeen,
  type StrengthEstimate,
  sharesOf,
} from '../../src/strength/strength-change.ts';

/** Twice a week, three sets, at these shares of 100 kg. */
const sessions = (shares: readonly number[], track = 'squat 5-8'): SessionSeen[] =>
  shares.map((share, at) => ({
    day: Math.floor(at * 3.5),
    track,
    sets: [0, 1, 2].map((place) => ({
      value: Math.log(100e9 * share * 0.975 ** place),
      variance: 0.02 ** 2,
      perToldRep: 0,
      place,
    })),
  }));

const steady = Array.from({ length: 24 }, () => 1);
const changeOf = (of: readonly SessionSeen[], until = 84) => {
  const found = estimateStrength(new Map([['squat', of]]), 0, until).lifts.get('squat');
  if (!found) throw new Error('sessions tell');
  return found.change;
};

describe('a change of strength', () => {
  it('is none where every session shows the same', () => {
    expect(sharesOf(changeOf(sessions(steady))).share).toBeCloseTo(1, 3);
  });

  it('is found within its interval, of a slow loss and of a step', () => {
    const slow = steady.map((_, at) => 1 - 0.09 * (at / 23));
    const step = steady.map((_, at) => (at < 12 ? 1 : 0.93));
    for (const [course, truth] of [
      [slow, 0.91],
      [step, 0.93],
    ] as const) {
      const { low, high } = sharesOf(changeOf(sessions(course)));
      expect(low).toBeLessThan(truth);
      expect(high).toBeGreaterThan(truth);
    }
  });

  it('does not go on after a step that all lifts made at once', () => {
    const keys = ['squat', 'bench', 'row', 'press'];
    const stepped = (after: number) => steady.map((_, at) => (at < 24 - after ? 1 : 0.93));
    const keptOf = (after: number) => {
      const lifts = new Map(keys.map((key) => [key, sessions(stepped(after), key)]));
      return sharesOf(estimateStrength(lifts, 0, 84).together(keys) ?? { mean: 9, error: 9 }).share;
    };
    for (const after of [5, 8, 12, 16]) {
      expect(keptOf(after)).toBeGreaterThan(0.925);
      expect(keptOf(after)).toBeLessThan(0.945);
    }
  });

  it('is a step of one lift by itself once it has come out low four times', () => {
    const fallen = sessions(steady.map((_, at) => (at < 20 ? 1 : 0.8)));
    const held = ['bench', 'row'].map((key) => [key, sessions(steady, key)] as const);
    const { lifts } = estimateStrength(new Map([['squat', fallen], ...held]), 0, 84);
    expect(sharesOf(lifts.get('squat')?.change ?? { mean: 9, error: 9 }).share).toBeLessThan(0.83);
    expect(oddsOfLoss(lifts.get('bench')?.change ?? { mean: -9, error: 9 }, 0.02)).toBeLessThan(
      0.5,
    );
  });

  it('is counted from the base day, where the first session tells of a slope a week after it', () => {
    const keys = ['squat', 'bench', 'row', 'press'];
    const slow = sessions(steady.map((_, at) => 1 - 0.12 * (at / 23)));
    const changeSince = (base: number) =>
      estimateStrength(new Map(keys.map((key) => [key, slow])), base, 84).together(keys)?.mean ?? 0;
    expect(changeSince(-7)).toBeLessThan(changeSince(0) - 0.005);
    expect(changeSince(-60)).toBeCloseTo(changeSince(0), 2);
  });

  it('is hardly moved by one bad day, and by two at the end more than twice as much', () => {
    const bad = (n: number) => changeOf(sessions(steady.map((_, at) => (at >= 24 - n ? 0.9 : 1))));
    expect(bad(1).mean).toBeGreaterThan(-0.03);
    expect(bad(4).mean).toBeLessThan(bad(1).mean * 2);
  });

  it('is not a set dropped: the third set was weaker because it was the third', () => {
    const dropped = sessions(steady).map((session, at) => ({
      ...session,
      sets: at < 12 ? session.sets : session.sets.slice(0, 2),
    }));
    expect(changeOf(dropped).mean).toBeCloseTo(0, 2);
  });

  it('is not another rep range, whose curve may be the lifter’s own', () => {
    const half = sessions(steady);
    const other = sessions(
      steady.map(() => 0.94),
      'squat 12-15',
    );
    const mixed = [...half.slice(0, 12), ...other.slice(12)];
    const { mean, error } = changeOf(mixed);
    expect(Math.abs(mean)).toBeLessThan(2 * error);
    expect(error).toBeGreaterThan(changeOf(half).error);
  });

  it('grows less certain while nothing is trained', () => {
    const of = sessions(steady);
    expect(changeOf(of, 140).error).toBeGreaterThan(changeOf(of, 84).error);
  });

  it('does not depend on the unit, nor on the order of lifts', () => {
    const share = fc.double({ min: 0.85, max: 1.15, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(share, { minLength: 4, maxLength: 12 }),
        fc.array(share, { minLength: 4, maxLength: 12 }),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        (a, b, unit) => {
          const [one, two] = [sessions(a), sessions(b, 'bench 5-8')];
          const inUnit = one.map((session) => ({
            ...session,
            sets: session.sets.map((set) => ({ ...set, value: set.value + Math.log(unit) })),
          }));
          const first = estimateStrength(
            new Map([
              ['a', one],
              ['b', two],
            ]),
            0,
            84,
          ).lifts.get('a');
          const second = estimateStrength(
            new Map([
              ['b', two],
              ['a', inUnit],
            ]),
            0,
            84,
          ).lifts.get('a');
          expect(second?.change.mean).toBeCloseTo(first?.change.mean ?? Number.NaN, 6);
          expect(second?.change.error).toBeCloseTo(first?.change.error ?? Number.NaN, 6);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('of all lifts together is more certain than of each', () => {
    const shares = steady.map((_, at) => 1 - 0.03 * (at / 23));
    const keys = ['squat', 'bench', 'row', 'press'];
    const { lifts, together } = estimateStrength(
      new Map(keys.map((key) => [key, sessions(shares, key)])),
      0,
      84,
    );
    const all = together(keys);
    for (const { change } of lifts.values()) {
      expect(all?.error).toBeLessThan(change.error);
      expect(oddsOfLoss(all ?? change, 0.02)).toBeGreaterThan(oddsOfLoss(change, 0.02));
    }
    expect(together([])).toBeNull();
    expect(together(['curl'])).toBeNull();
  });

  it('lets a lift go its own way where the others stay', () => {
    const { lifts } = estimateStrength(
      new Map([
        ['squat', sessions(steady.map((_, at) => 1 - 0.12 * (at / 23)))],
        ...['bench', 'row', 'press'].map((key) => [key, sessions(steady, key)] as const),
      ]),
      0,
      84,
    );
    const changeOfLift = (lift: string) => lifts.get(lift)?.change ?? { mean: 9, error: 9 };
    expect(sharesOf(changeOfLift('squat')).low).toBeLessThan(0.88);
    expect(oddsOfLoss(changeOfLift('squat'), 0.02)).toBeGreaterThan(0.99);
    for (const key of ['bench', 'row', 'press']) {
      expect(sharesOf(changeOfLift(key)).low).toBeGreaterThan(0.95);
      expect(oddsOfLoss(changeOfLift(key), 0.02)).toBeLessThan(0.5);
    }
  });

  it('gives a passing dip of all lifts to the form of those days', () => {
    const dip = sessions(steady.map((_, at) => (at >= 14 && at < 16 ? 0.94 : 1)));
    const keys = ['squat', 'bench', 'row'];
    const asOf = (until: number) =>
      estimateStrength(
        new Map(keys.map((key) => [key, dip.filter(({ day }) => day <= until)])),
        0,
        until,
      ).together(keys);
    expect(oddsOfLoss(asOf(52) ?? { mean: -1, error: 1 }, 0.02)).toBeLessThan(0.98);
    expect(asOf(84)?.mean).toBeGreaterThan(-0.01);
  });

  it('has odds of one half at the loss itself', () => {
    expect(oddsOfLoss({ mean: Math.log(0.98), error: 0.02 }, 0.02)).toBeCloseTo(0.5, 6);
    // Tables of the normal distribution: 1.2816 standard deviations leave a tenth above.
    expect(oddsOfLoss({ mean: Math.log(0.98) - 1.2816 * 0.02, error: 0.02 }, 0.02)).toBeCloseTo(
      0.9,
      4,
    );
  });

  it('of several days in one pass is that of each day by itself', () => {
    // Where every set falls alike, the fall that is learned is the same on all days.
    const shares = steady.map((_, at) => 1 + 0.02 * Math.sin(at) - (at % 7 === 0 ? 0.05 : 0));
    const lifts = new Map(['squat', 'bench'].map((key) => [key, sessions(shares, key)]));
    const days = [28, 50, 84];
    const together = (day: number, estimate: StrengthEstimate) => ({
      day,
      change: estimate.lifts.get('squat')?.change,
      all: estimate.together(['squat', 'bench']),
    });
    const alone = days.map((day) => {
      const until = [...lifts].map(
        ([key, of]) => [key, of.filter((session) => session.day <= day)] as const,
      );
      return together(day, estimateStrength(new Map(until), 14, day));
    });
    const over = estimateStrengthOver(lifts, 14, days, (estimate, day) => together(day, estimate));
    for (const [at, { day, change, all }] of over.entries()) {
      expect(day).toBe(alone[at]?.day);
      expect(change?.mean).toBeCloseTo(alone[at]?.change?.mean ?? Number.NaN, 9);
      expect(change?.error).toBeCloseTo(alone[at]?.change?.error ?? Number.NaN, 9);
      expect(all?.mean).toBeCloseTo(alone[at]?.all?.mean ?? Number.NaN, 9);
    }
    const levels = levelsOver(
      lifts,
      days.map((day) => ({ lift: 'bench', day })),
    );
    expect(levels.at(-1)?.mean).toBeCloseTo(
      estimateStrength(lifts, 84, 84).lifts.get('bench')?.level.mean ?? Number.NaN,
      9,
    );
  });

  it('takes little time: eight lifts of a long cut in well under 40 ms', () => {
    const long = sessions(Array.from({ length: 48 }, (_, at) => 1 - 0.001 * at));
    const lifts = new Map(Array.from({ length: 8 }, (_, at) => [`lift ${at}`, long]));
    estimateStrength(lifts, 0, 168);
    const from = performance.now();
    estimateStrength(lifts, 0, 168);
    expect(performance.now() - from).toBeLessThan(40);
  });
});
