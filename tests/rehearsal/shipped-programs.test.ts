import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import type { Program } from '../../src/program/program.ts';
import { drawAt } from '../../src/rehearsal/draws.ts';
import type { LifterKindName } from '../../src/rehearsal/lifter-model.ts';
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

const SHIPPED = forCuts(shippedPrograms()).map((program) => ({
  name: program.name,
  program,
  verdict: rehearsed(program),
}));

describe.each(SHIPPED)('twelve weeks of "$name" while losing 0.7 % a week', ({ verdict }) => {
  it('keep at least 97 % of strength', () => {
    expect(verdict.kept).toBeGreaterThanOrEqual(0.97);
  });

  it('give every muscle with direct work 6 to 10 hard sets in an average week', () => {
    expect(verdict.muscles.filter(({ judged }) => judged !== 'inside')).toEqual([]);
  });
});

/** Strength kept after twelve weeks, mean of six lifters of a kind. */
const keptBy = (program: Program, kind: LifterKindName, loss: number): number => {
  const options = {
    from: FROM,
    weeks: 12,
    loss,
    seed: 1,
    gear: defaultGear(program.unit),
    bodyMass: kilograms(80),
  };
  const draws = [0, 1, 2, 3, 4, 5].map((at) => drawAt(program, options, { kind, own: null }, at));
  return draws.reduce((sum, { verdict }) => sum + verdict.kept, 0) / draws.length;
};

// On average people who train in a deficit gain strength as others do (Murphy & Koehler 2022, Scand
// J Med Sci Sports 32(1):125–137); slowly enough (0.7 %: Garthe 2011), and the leaner the slower
// (ISSN 2017). How much for whom: ours.
describe.each(SHIPPED)(
  'twelve weeks of "$name"',
  ({ program }) => {
    it('let a novice gain in a small deficit, and a trained lifter hold', () => {
      expect(keptBy(program, 'novice', 0.5)).toBeGreaterThan(1.05);
      expect(Math.abs(keptBy(program, 'trained', 0.5) - 1)).toBeLessThan(0.02);
    });

    it('cost a lean lifter a little at 1 % a week', () => {
      const kept = keptBy(program, 'lean', 1);
      expect(kept).toBeLessThan(0.99);
      expect(kept).toBeGreaterThan(0.94);
    });
  },
  120_000,
);

describe('about 20 sets a muscle on six days', () => {
  const verdict = rehearsed(tooMuch());

  it('loses strength that the shipped programs keep', () => {
    expect(verdict.keepsStrength).toBe(false);
    const kept = SHIPPED.map((each) => each.verdict.kept);
    expect(verdict.kept).toBeLessThan(Math.min(...kept) - 0.03);
  });

  it('is told as too much for every muscle, with sessions over an hour and a half', () => {
    expect(verdict.muscles.filter(({ judged }) => judged !== 'too-much')).toEqual([]);
    expect(verdict.longest).toBeGreaterThan(90);
  });
});
