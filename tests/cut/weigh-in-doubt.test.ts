import { describe, expect, it } from 'vitest';
import { replacedBy, weighInDoubt } from '../../src/cut/weigh-in-doubt.ts';
import { problemText } from '../../src/text/problem.ts';
import { kilograms, pounds } from '../../src/training/mass.ts';
import { day } from './made.ts';

const earlier = [
  { date: day('2026-11-20'), mass: kilograms(82.8) },
  { date: day('2026-11-24'), mass: kilograms(82.6) },
];
const today = day('2026-11-25');

describe('a weigh-in that may be a slip of the finger', () => {
  it.each([
    [824, 82.4],
    [8.24, 82.4],
    [8240, 82.4],
  ])('asks whether %d was %d', (typed, meant) => {
    expect(weighInDoubt(kilograms(typed), today, earlier, 'kg')?.meant).toBe(kilograms(meant));
  });

  it('asks whether pounds were typed as kilograms, and the other way round', () => {
    expect(weighInDoubt(kilograms(181.7), today, earlier, 'kg')?.meant).toBe(pounds(181.7));
    expect(weighInDoubt(pounds(82.4), today, earlier, 'lb')?.meant).toBe(kilograms(82.4));
  });

  it('says so in a sentence', () => {
    const doubt = weighInDoubt(kilograms(824), today, earlier, 'kg');
    expect(doubt && problemText(doubt.problem)).toBe(
      '824 kg is far from the 82.6 kg of Tue 24 Nov 2026. Was it 82.4 kg? Enter that, or say once more that 824 kg is right.',
    );
  });

  it('compares with the latest day before, in whatever order days were entered', () => {
    const orders = [earlier, earlier.toReversed()].map((known) => [
      ...known,
      { date: day('2026-11-23'), mass: kilograms(70) },
      { date: day('2026-11-25'), mass: kilograms(60) },
    ]);
    for (const known of orders) {
      expect(weighInDoubt(kilograms(82.4), today, known, 'kg')).toBeNull();
      expect(weighInDoubt(kilograms(70), today, known, 'kg')?.problem.what).toContain(
        'Tue 24 Nov 2026',
      );
    }
  });

  it('lets water pass, and more the longer the last weigh-in is ago', () => {
    expect(weighInDoubt(kilograms(85.1), today, earlier, 'kg')).toBeNull();
    expect(weighInDoubt(kilograms(74), today, earlier, 'kg')).not.toBeNull();
    expect(weighInDoubt(kilograms(74), day('2027-02-25'), earlier, 'kg')).toBeNull();
  });

  it.each([
    // 5 % at once and 0.2 % for each day, a quarter at most.
    [1, 84.16, 75.84],
    [50, 92, 68],
    [100, 100, 60],
    [300, 100, 60],
  ])('%d days after 80 kg it passes from %d to %d kg', (days, high, low) => {
    const last = [{ date: today.subtract({ days }), mass: kilograms(80) }];
    const passes = (kg: number) => weighInDoubt(kilograms(kg), today, last, 'kg') === null;
    expect([low - 0.01, low + 0.001, high - 0.001, high + 0.01].map(passes)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('takes from 30 to 300 kg for a body weight where there is none before', () => {
    const passes = (kg: number) => weighInDoubt(kilograms(kg), today, [], 'kg') === null;
    expect([29.9, 30, 300, 300.1].map(passes)).toEqual([false, true, true, false]);
  });

  it('puts right what was said of the same day, where the two are more than a twentieth apart', () => {
    const said = [today, today.subtract({ days: 1 })].map((date) => ({
      date,
      mass: kilograms(80),
    }));
    const replaced = (kg: number) => replacedBy(kilograms(kg), today, said).length;
    expect([75.9, 76.1, 83.9, 84.1].map(replaced)).toEqual([1, 0, 0, 1]);
  });

  it('asks about the first one only where no adult weighs so much', () => {
    expect(weighInDoubt(kilograms(140), today, [], 'kg')).toBeNull();
    expect(weighInDoubt(kilograms(824), today, [], 'kg')?.meant).toBe(kilograms(82.4));
  });

  it('has no guess where nothing is near', () => {
    expect(weighInDoubt(kilograms(60), today, earlier, 'kg')?.meant).toBeNull();
  });

  it('passes what agrees with the days before an odd one, and the odd one no more once it was left', () => {
    const odd = [...earlier, { date: today, mass: kilograms(70) }];
    const doubt = (kg: number, known: typeof odd, days: number) =>
      weighInDoubt(kilograms(kg), today.add({ days }), known, 'kg');
    expect(doubt(82.4, odd, 1)).toBeNull();
    expect(doubt(70.2, odd, 1)).toBeNull();
    expect(doubt(76, odd, 1)?.problem.what).toContain('the 70 kg');
    const left = [...odd, { date: today.add({ days: 1 }), mass: kilograms(82.4) }];
    expect(doubt(70.2, left, 2)?.problem.what).toContain('the 82.4 kg');
  });

  it('compares a late entry with what was before it', () => {
    const later = [...earlier, { date: day('2026-12-24'), mass: kilograms(60) }];
    expect(weighInDoubt(kilograms(82.5), today, later, 'kg')).toBeNull();
  });
});
