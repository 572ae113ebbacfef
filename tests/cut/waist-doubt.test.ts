import { describe, expect, it } from 'vitest';
import { waistDoubt } from '../../src/cut/waist-doubt.ts';
import { lengthOf, lengthText } from '../../src/training/length.ts';
import { day } from './made.ts';

const TODAY = day('2026-11-25');
const reading = (cm: number, on: string) => ({ id: on, date: day(on), length: lengthOf(cm, 'cm') });
const asked = (cm: number, ...earlier: readonly ReturnType<typeof reading>[]) =>
  waistDoubt(lengthOf(cm, 'cm'), TODAY, earlier, 'cm');

describe('a waist reading', () => {
  it('is asked about where hardly anybody has it, with what was probably meant', () => {
    const doubt = waistDoubt(lengthOf(86, 'in'), TODAY, [], 'in');
    expect(doubt?.problem).toEqual({
      what: 'A waist of 86 in is an unlikely one.',
      fix: 'Was it 86 cm? Enter that, or say once more that 86 in is right.',
    });
    expect(asked(240)?.problem.fix).toBe(
      'Check the number, or say once more that 240 cm is right.',
    );
    expect(asked(49)?.meant).toBe(lengthOf(49, 'in'));
    expect(asked(51)).toBeNull();
    expect(asked(169)).toBeNull();
  });

  it('is asked about where it is far from the one before', () => {
    const before = [reading(86, '2026-11-20'), reading(120, '2026-05-01')];
    expect(asked(84, ...before)).toBeNull();
    expect(asked(101, ...before)?.problem.what).toBe(
      'A waist of 101 cm is far from the 86 cm of Fri 20 Nov 2026.',
    );
    const inches = asked(34, ...before)?.meant;
    expect(inches && lengthText(inches, 'in')).toBe('34 in');
  });

  it('may differ more the longer ago the one before is', () => {
    expect(asked(100, reading(86, '2026-11-24'))).not.toBeNull();
    expect(asked(100, reading(86, '2026-09-01'))).toBeNull();
  });

  it('is not held to another one of the same day, which it may put right', () => {
    expect(asked(86, reading(110, '2026-11-25'))).toBeNull();
  });
});
