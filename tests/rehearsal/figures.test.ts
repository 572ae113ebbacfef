import { describe, expect, it } from 'vitest';
import { LIFTER_MODEL } from '../../src/rehearsal/lifter-model.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { dosesOf, isInOrder } from '../figures/doses.ts';
import { forCuts, shippedPrograms, tooMuch } from '../figures/programs.ts';
import { sampleOfLifters } from '../figures/sample-of-lifters.ts';
import { varyModel } from './made-model.ts';

// A small sample of what `npm run figures` runs at full size, with seeds of its own.
const programs = forCuts(shippedPrograms());

describe('twelve lifters of all kinds, 24 weeks each', () => {
  const sample = sampleOfLifters(programs, 12, 3001);

  it('are seen at all', () => {
    expect(sample.judged).toBeGreaterThan(2000);
    expect(sample.layoffs).toBeGreaterThan(20);
    expect(sample.gaining).toBeGreaterThan(20);
  });

  it('are given loads within 10 % of what they can do for the range, or within a step', () => {
    expect(sample.outside / sample.judged).toBeLessThan(0.01);
  });

  it('never go back and forth between two loads more than twice running', () => {
    expect(Math.max(...sample.oscillations.keys())).toBeLessThanOrEqual(2);
  });

  it('are back from a layoff within four sessions', () => {
    const took = [...sample.recoveries.keys()];
    expect(took).not.toContain(null);
    expect(Math.max(...took.map(Number))).toBeLessThanOrEqual(4);
  });

  it('leave a load that they have truly outgrown', () => {
    expect(Math.max(...sample.heldBack.keys())).toBeLessThanOrEqual(12);
  });
});

describe('strength kept', () => {
  it('rises from no training over half the program to the program, and falls with far too much', () => {
    const [program] = programs;
    if (!program) throw new Error('No program is shipped.');
    const draws = [5001, 5002, 5003, 5004, 5005, 5006, 5007, 5008, 5009, 5010];
    const inOrder = draws.filter((seed) => {
      const model = varyModel(LIFTER_MODEL, 0.3, seededRandom(seed));
      return isInOrder(dosesOf(program, tooMuch(), model, seed));
    });
    expect(inOrder.length).toBeGreaterThanOrEqual(9);
  }, 120_000);
});
