import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';

const draw = (count: number, next: () => number): number[] => Array.from({ length: count }, next);
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

describe('seeded random numbers', () => {
  it('are the same for the same seed, and others for another', () => {
    const [a, b, c] = [seededRandom(1), seededRandom(1), seededRandom(2)].map((random) =>
      draw(20, random.uniform),
    );
    expect(a).toEqual(b);
    expect(a).not.toEqual(c);
  });

  it('lie evenly from 0 to 1', () => {
    const drawn = draw(20_000, seededRandom(3).uniform);
    const tenths = drawn.reduce<number[]>((counts, value) => {
      const tenth = Math.floor(value * 10);
      counts[tenth] = (counts[tenth] ?? 0) + 1;
      return counts;
    }, []);
    expect(tenths).toHaveLength(10);
    // Chi-square with 9 degrees of freedom: 27.9 is passed once in a thousand.
    const chi = tenths.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0);
    expect(chi).toBeLessThan(27.9);
  });

  it('are normal with mean 0 and deviation 1: 68.3 % within one, 95.4 % within two', () => {
    const drawn = draw(20_000, seededRandom(4).normal);
    const within = (bound: number) => drawn.filter((x) => Math.abs(x) < bound).length / 20_000;
    expect(mean(drawn)).toBeCloseTo(0, 1);
    expect(within(1)).toBeCloseTo(0.683, 1.5);
    expect(within(2)).toBeCloseTo(0.954, 1.5);
  });
});
