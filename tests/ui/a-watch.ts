import { Temporal } from 'temporal-polyfill';
import type { Change, Watch } from '../../src/workbench/watch.ts';

const nothing = (): never => {
  throw new Error('This scene has no past to ask.');
};

/** A past that holds nothing; a test gives what it needs of it. */
export function emptyWatch(given: Partial<Watch> = {}): Watch {
  return {
    unit: () => 'kg',
    review: nothing,
    weightAdvice: () => 'yes',
    programEdit: nothing,
    weighing: () => ({ date: Temporal.PlainDate.from('2026-11-25'), unit: 'kg', words: [] }),
    doubt: () => null,
    lifts: () => [],
    results: () => [],
    change: (change: Change) => ({ said: `done: ${change.kind}` }),
    ...given,
  };
}
