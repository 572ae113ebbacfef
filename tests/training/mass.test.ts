import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  inUnit,
  kilograms,
  massNumber,
  massOf,
  massText,
  micrograms,
  plus,
  pounds,
  readQuantity,
  share,
  times,
} from '../../src/training/mass.ts';

describe('mass is exact', () => {
  test('over thousands of plates in both units nothing drifts', () => {
    const stamps = [25, 20, 15, 10, 5, 2.5, 1.25, 0.5, 0.25].flatMap((amount) => [
      { amount, unit: 'kg' as const, thousandths: BigInt(amount * 1000) * 1_000_000n },
      // A quarter pound is half a microgram off; plates go on in pairs, so pairs are weighed.
      {
        amount: amount * 2,
        unit: 'lb' as const,
        thousandths: (BigInt(amount * 2000) * 453_592_370n) / 1000n,
      },
    ]);
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...stamps), { minLength: 2000, maxLength: 4000 }),
        (all) => {
          const sum = all.reduce((total, stamp) => plus(total, massOf(stamp)), micrograms(0));
          const exact = all.reduce((total, { thousandths }) => total + thousandths, 0n);
          expect(BigInt(sum)).toBe(exact);
          const backwards = all.reduceRight(
            (total, stamp) => plus(total, massOf(stamp)),
            micrograms(0),
          );
          expect(backwards).toBe(sum);
        },
      ),
      { numRuns: 10 },
    );
  });

  test('0.1 kg ten times is 1 kg', () => {
    expect(times(kilograms(0.1), 10)).toBe(kilograms(1));
  });

  test('a share of a mass is not a microgram short of the whole number it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 800 }),
        fc.integer({ min: 1, max: 120 }),
        (steps, percent) => {
          const mass = kilograms(steps * 1.25);
          expect(share(mass, percent / 100)).toBe(Math.floor((mass / 100) * percent));
        },
      ),
    );
  });

  test('refuses what is not a whole number of micrograms', () => {
    expect(() => micrograms(0.5)).toThrow('whole number of micrograms');
    expect(() => micrograms(Number.MAX_SAFE_INTEGER + 1)).toThrow();
    expect(() => massOf({ amount: Number.NaN, unit: 'kg' })).toThrow();
  });
});

describe('mass as it is read and written', () => {
  test('has no more digits than it needs', () => {
    expect(massText(kilograms(82.5), 'kg')).toBe('82.5 kg');
    expect(massText(pounds(45), 'lb')).toBe('45 lb');
    expect(massText(pounds(45), 'kg')).toBe('20.41 kg');
    expect(massText(kilograms(-0.001), 'kg')).toBe('0 kg');
  });

  test('goes out in a unit and comes back the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40_000 }),
        fc.constantFrom('kg', 'lb'),
        (quarters, unit) => {
          const written = massOf({ amount: quarters / 4, unit });
          expect(inUnit(written, unit)).toBeCloseTo(quarters / 4, 8);
          expect(massOf({ amount: inUnit(written, unit), unit })).toBe(written);
        },
      ),
    );
  });

  test.each([
    ['82.5', 82.5, 'kg'],
    ['82,5 kg', 82.5, 'kg'],
    ['181.9lb', 181.9, 'lb'],
    ['-20 kg', -20, 'kg'],
    ['45 pounds', 45, 'lb'],
  ] as const)('reads %j', (text, amount, unit) => {
    expect(readQuantity(text, 'kg')).toEqual({ amount, unit });
  });

  test.each(['', 'heavy', '12 stone', '1e3', '5 kg 2', '.'])('does not read %j', (text) => {
    expect(readQuantity(text, 'kg')).toBeNull();
  });
});

test('a mass that rounds to nothing reads as 0, whichever side it comes from', () => {
  expect([-1_000_000, 0, 1_000_000].map((each) => massNumber(micrograms(each), 'kg'))).toEqual([
    '0',
    '0',
    '0',
  ]);
  expect(massNumber(micrograms(-2_500_000_000), 'kg')).toBe('-2.5');
});
