import type { EntryTarget } from './entry.ts';
import type { Screen, Typing } from './ui-state.ts';

/** An old set with the numbers that are typed over it. */
export function correctionOf({ set, field, typed, back }: Extract<Screen, { kind: 'correct' }>): {
  readonly target: EntryTarget;
  readonly draft: Typing;
} {
  return {
    target: { of: null, exercise: back.past.row.result.exercise, numbers: set },
    draft: { of: set.id, field, typed },
  };
}
