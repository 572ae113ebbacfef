import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isLoadable, loadsFor } from '../../src/training/loads.ts';
import { kilograms, type Mass, micrograms } from '../../src/training/mass.ts';
import { platesHandled } from '../../src/training/plates.ts';
import { type WarmUpNeed, warmUpSets } from '../../src/training/warm-up.ts';
import { anyPlates, kg, plates, someGear } from './some-gear.ts';

const gear = someGear({ plates: plates(4, kg(20), kg(15), kg(10), kg(5), kg(2.5), kg(1.25)) });
const barbell = { loading: 'barbell', hands: 1, bar: null, step: null } as const;

const need = (work: number, changes: Partial<WarmUpNeed> = {}): WarmUpNeed => ({
  work: kilograms(work),
  lo: 5,
  loads: loadsFor(gear, barbell),
  style: 'straight',
  kind: 'compound',
  loading: 'barbell',
  counts: 'reps',
  warmth: 'first-for-muscles',
  ...changes,
});

const ramp = (asked: WarmUpNeed): string =>
  warmUpSets(asked)
    .map(({ load, reps }) => `${load / 1e9} × ${reps}`)
    .join(', ');

// The worked cases of the rule (common practice): 40, 60, 80 %, rounded down, never under the bar.
describe('the first straight sets of their muscles', () => {
  test('100 kg for 5 to 8: 40, 60, 80', () => {
    expect(ramp(need(100))).toBe('40 × 8, 60 × 5, 80 × 2');
  });

  test('30 kg: the empty bar, then 22.5', () => {
    expect(ramp(need(30))).toBe('20 × 8, 22.5 × 2');
  });

  test('a range from 4 or lower adds a single', () => {
    expect(ramp(need(100, { lo: 4 }))).toBe('40 × 8, 60 × 5, 80 × 2, 90 × 1');
  });

  test('the bar alone needs none, nor does what is hardly heavier', () => {
    expect(ramp(need(20))).toBe('');
    expect(ramp(need(21.25))).toBe('');
    expect(ramp(need(22.5))).toBe('20 × 8');
  });
});

test('muscles that are warm need one set', () => {
  expect(ramp(need(100, { warmth: 'muscles-warm' }))).toBe('60 × 4');
});

test('clusters and isolation take half the load once, if they come first', () => {
  expect(ramp(need(100, { style: 'cluster' }))).toBe('50 × 8');
  expect(ramp(need(100, { kind: 'isolation' }))).toBe('50 × 8');
  expect(ramp(need(100, { kind: 'isolation', warmth: 'muscles-warm' }))).toBe('');
});

test('a body weight lift with added load has three without it', () => {
  expect(ramp(need(10, { loading: 'bodyweight' }))).toBe('0 × 3');
  expect(ramp(need(0, { loading: 'bodyweight' }))).toBe('');
  expect(ramp(need(-20, { loading: 'bodyweight' }))).toBe('');
});

test('timed holds have none', () => {
  expect(ramp(need(40, { counts: 'seconds' }))).toBe('');
});

describe('with plates to handle', () => {
  const handled = platesHandled(gear, null, []);
  const work = (asked: WarmUpNeed): number => {
    return handledIn([...warmUpSets(asked).map(({ load }) => load), asked.work]);
  };
  const handledIn = (loads: readonly Mass[]): number =>
    loads.reduce((sum, load, at) => sum + handled(loads[at - 1] ?? null, load), 0);

  test('round loads stay as they are', () => {
    expect(ramp(need(100, { handled }))).toBe('40 × 8, 60 × 5, 80 × 2');
    expect(ramp(need(30, { handled }))).toBe('20 × 8, 22.5 × 2');
  });

  test('a step a little lighter saves changing plates', () => {
    expect(ramp(need(107.5))).toBe('42.5 × 8, 62.5 × 5, 85 × 2');
    expect(work(need(107.5, { handled }))).toBeLessThan(work(need(107.5)));
  });

  test('handles as few as the best of all ways to make the steps a little lighter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 70 }), (steps) => {
        const asked = need(2.5 * steps);
        const plain = warmUpSets(asked);
        // Each step, or up to four loads of 2.5 kg less within a twentieth of the work load.
        const tries = plain.map(({ load }) =>
          [0, 1, 2, 3, 4]
            .map((down) => (load - down * kilograms(2.5)) as Mass)
            .filter((tried) => tried >= kilograms(20) && tried >= load - asked.work * 0.05 - 1),
        );
        const ways = tries.reduce<Mass[][]>(
          (all, loads) => all.flatMap((way) => loads.map((load) => [...way, load])),
          [[]],
        );
        const least = Math.min(
          ...ways
            .filter((way) => way.every((load, at) => load <= 0.9 * (way[at + 1] ?? asked.work)))
            .map((way) => handledIn([...way, asked.work])),
        );
        if (plain.length > 0) expect(work({ ...asked, handled })).toBe(least);
      }),
      { numRuns: 30 },
    );
  });

  test('never handles more than the plain steps', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 70 }), (steps) => {
        const asked = need(2.5 * steps);
        expect(work({ ...asked, handled })).toBeLessThanOrEqual(work(asked));
      }),
      { numRuns: 40 },
    );
  });
});

test('with any plates every step can be loaded, rises, and stays a tenth under the next', () => {
  fc.assert(
    fc.property(
      anyPlates,
      fc.integer({ min: 1, max: 200_000_000_000 }),
      fc.integer({ min: 1, max: 12 }),
      fc.boolean(),
      (owned, wish, lo, easier) => {
        const mine = someGear({ plates: owned });
        const loads = loadsFor(mine, barbell);
        const work = loads.atOrBelow(micrograms(wish)) ?? loads.lightest;
        const handled = easier ? { handled: platesHandled(mine, null, []) } : {};
        const steps = warmUpSets({ ...need(0), work, loads, lo, ...handled });
        const all = [...steps.map(({ load }) => load), work];
        for (const [at, { load }] of steps.entries()) {
          expect(isLoadable(loads, load)).toBe(true);
          expect(load).toBeLessThanOrEqual(0.9 * all[at + 1]!);
        }
      },
    ),
    { numRuns: 200 },
  );
});
