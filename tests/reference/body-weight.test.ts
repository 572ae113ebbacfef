import { describe, expect, test } from 'vitest';
import { inUnit, kilograms, NO_MASS } from '../../src/training/mass.ts';
import { systemLoad } from '../../src/training/strength.ts';

const lifted = (setting: number, body: number, share: number): number =>
  inUnit(systemLoad(kilograms(setting), kilograms(body), share)!, 'kg');

// Ebben 2011, JSCR 25(10):2891–2894.
describe('a push-up at 80 kg body weight', () => {
  test.each([
    ['on the hands and feet', 0.64, 51.2],
    ['on the knees', 0.49, 39.2],
    ['with the hands on a 60 cm box', 0.41, 32.8],
    // From memory, not seen in print:
    ['with the feet on a 60 cm box', 0.74, 59.2],
    ['with the hands on a 30 cm box', 0.55, 44],
  ])('%s moves %d of it', (_, share, moved) => {
    expect(lifted(0, 80, share)).toBe(moved);
  });
});

// The whole body in pull-ups, chin-ups and dips: ours.
describe('a pull-up at 80 kg body weight', () => {
  test('moves all of it, and what hangs from the belt, less what a band takes', () => {
    expect(lifted(0, 80, 1)).toBe(80);
    expect(lifted(10, 80, 1)).toBe(90);
    expect(lifted(-20, 80, 1)).toBe(60);
  });

  test('is less work when the lifter gets lighter', () => {
    expect(lifted(0, 75, 1)).toBeLessThan(lifted(0, 80, 1));
  });

  test('has no load before the first weigh-in', () => {
    expect(systemLoad(NO_MASS, null, 1)).toBeNull();
  });
});
