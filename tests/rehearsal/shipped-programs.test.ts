import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import type { Program } from '../../src/program/program.ts';
import { rehearse } from '../../src/rehearsal/rehearse.ts';
import { verdictOf } from '../../src/rehearsal/verdict-of.ts';
import { weeksOf } from '../../src/rehearsal/weeks-of.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { forCuts, shippedPrograms, tooMuch } from '../figures/programs.ts';

const FROM = Temporal.PlainDate.from('2026-01-05');

const rehearsed = (program: Program) => {
  const options = {
    from: FROM,
    weeks: 12,
    loss: 0.7,
    seed: 1,
    gear: defaultGear(program.unit),
    bodyMass: kilograms(80),
  };
  return verdictOf(program, weeksOf(program, rehearse(program, options), FROM));
};

describe.each(forCuts(shippedPrograms()).map((program) => [program.name, program] as const))(
  'twelve weeks of "%s" while losing 0.7 % a week',
  (_, program) => {
    const verdict = rehearsed(program);

    it('keep at least 97 % of strength', () => {
      expect(verdict.kept).toBeGreaterThanOrEqual(0.97);
    });

    it('give every muscle with direct work 6 to 10 hard sets in an average week', () => {
      expect(verdict.muscles.filter(({ judged }) => judged !== 'inside')).toEqual([]);
    });
  },
);

describe('about 20 sets a muscle on six days', () => {
  const verdict = rehearsed(tooMuch());

  it('loses strength that the shipped programs keep', () => {
    expect(verdict.keepsStrength).toBe(false);
    const kept = forCuts(shippedPrograms()).map((program) => rehearsed(program).kept);
    expect(verdict.kept).toBeLessThan(Math.min(...kept) - 0.03);
  });

  it('is told as too much for every muscle, with sessions over an hour and a half', () => {
    expect(verdict.muscles.filter(({ judged }) => judged !== 'too-much')).toEqual([]);
    expect(verdict.longest).toBeGreaterThan(90);
  });
});
