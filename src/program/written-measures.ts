import { type Quantity, readQuantity } from '../training/mass.ts';
import type { Rest } from './program.ts';
import { written } from './written.ts';
import { shown, Wrong } from './wrong.ts';

const LONGEST_REST = 15 * 60;

/** `3-5 min`, `90 s`, `90 s - 2 min`; seconds. */
export function rest(description: string, example: string) {
  const fix = `Write seconds or minutes, such as ${example}.`;
  const forEditors = {
    description,
    type: 'string',
    pattern:
      '^\\d+(\\.\\d+)? *(s|min)?( *[-–] *\\d+(\\.\\d+)?)? *(s|min)$|^\\d+(\\.\\d+)? *(s|min)$',
    examples: [example],
  };
  return written<Rest>(forEditors, (found) => {
    const text = String(found).trim();
    const clock = /^(\d+):([0-5]\d)$/.exec(text);
    if (clock) {
      const seconds = Number(clock[1]) * 60 + Number(clock[2]);
      return new Wrong(`${shown(found)} is a time of day, not a rest.`, `Write ${seconds} s.`);
    }
    if (/^\d+(\.\d+)?(\s*[-–]\s*\d+(\.\d+)?)?$/.test(text)) {
      return new Wrong(`${shown(found)} has no unit.`, `Write ${text} s or ${text} min.`);
    }
    const parts = /^(\d+(?:\.\d+)?)\s*(?:(s|min)?\s*[-–]\s*(\d+(?:\.\d+)?)\s*)?(s|min)$/.exec(text);
    if (!parts || typeof found !== 'string') {
      return new Wrong(`${shown(found)} is not a rest.`, fix);
    }
    const [, early, earlyUnit, late, unit] = parts;
    const from = secondsOf(early, earlyUnit ?? unit);
    const to = secondsOf(late ?? early, unit);
    if (from > to) return new Wrong(`${shown(found)} runs backwards.`, fix);
    if (to > LONGEST_REST) return new Wrong(`${shown(found)} is over 15 minutes.`, fix);
    if (to === 0) return new Wrong('there is no rest of 0 seconds.', fix);
    return { from, to };
  });
}

const secondsOf = (amount: string | undefined, unit: string | undefined): number =>
  Math.round(Number(amount) * (unit === 'min' ? 60 : 1));

/** A mass: a bare number is in the program's unit; `45 lb` says its own. */
export interface WrittenMass {
  readonly amount: number;
  /** Null: the program's unit. */
  readonly unit: Quantity['unit'] | null;
}

const MOST_MASS = 1000;

export function massOfLoad(description: string, examples: readonly (number | string)[]) {
  const fix = 'Write a number in the unit of the program, or one with kg or lb behind it.';
  const forEditors = {
    description,
    anyOf: [
      { type: 'number', minimum: -MOST_MASS, maximum: MOST_MASS },
      { type: 'string', pattern: '^[+-]?\\d+([.,]\\d+)? *(kg|lb)$' },
    ],
    examples,
  };
  return written<WrittenMass>(forEditors, (found) => {
    const read =
      typeof found === 'number'
        ? { amount: found, unit: null }
        : typeof found === 'string' && /(?:kg|lb)$/.test(found.trim())
          ? readQuantity(found, 'kg')
          : null;
    if (!read || !Number.isFinite(read.amount)) {
      return new Wrong(`${shown(found)} is not a load.`, fix);
    }
    if (Math.abs(read.amount) > MOST_MASS) {
      return new Wrong(`${shown(found)} is more than anyone lifts.`, fix);
    }
    return read;
  });
}
