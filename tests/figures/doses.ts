import { Temporal } from 'temporal-polyfill';
import type { Program } from '../../src/program/program.ts';
import type { LifterModel } from '../../src/rehearsal/lifter-model.ts';
import { rehearse } from '../../src/rehearsal/rehearse.ts';
import { weeksOf } from '../../src/rehearsal/weeks-of.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { halfOf } from './programs.ts';

const FROM = Temporal.PlainDate.from('2026-01-05');
const WEEKS = 12;
const LOSS = 0.7;

/** Strength kept after twelve weeks of losing 0.7 % a week, as a share. */
export interface Doses {
  readonly none: number;
  readonly half: number;
  readonly whole: number;
  readonly tooMuch: number;
}

/** What one lifter keeps of the same strength with no training, half a program, all of it, and far too much. */
export function dosesOf(
  program: Program,
  tooMuch: Program,
  model: LifterModel,
  seed: number,
): Doses {
  const kept = (each: Program, away: readonly (readonly [number, number])[] = []): number => {
    const options = {
      from: FROM,
      weeks: WEEKS,
      loss: LOSS,
      seed,
      gear: defaultGear('kg'),
      bodyMass: kilograms(80),
      model,
      away,
    };
    return weeksOf(each, rehearse(each, options), FROM).at(-1)?.kept ?? 0;
  };
  return {
    none: kept(program, [[0, WEEKS * 7]]),
    half: kept(halfOf(program)),
    whole: kept(program),
    tooMuch: kept(tooMuch),
  };
}

/** No training < half the program < the program > far too much. */
export const isInOrder = ({ none, half, whole, tooMuch }: Doses): boolean =>
  none < half && half < whole && whole > tooMuch;
