import type { Coach } from '../lifter/coach.ts';
import { massNumber, massOf, readQuantity, type Unit } from '../training/mass.ts';
import { type EntryTarget, fieldsOf, fieldText } from './entry.ts';
import type { Model } from './model.ts';
import type { Field, Typing } from './ui-state.ts';

/** Longest number that a field takes: `102.25`. */
const LONGEST = { count: 3, reserve: 2, load: 6 } as const;

const typed = (draft: Typing, field: Field, text: string): Typing => ({
  ...draft,
  typed: { ...draft.typed, [field]: text },
});

/** One more digit or decimal point in the field; the first of another number where what stands was refused. */
export function typedInto(draft: Typing, key: string, isRefused: boolean): Typing {
  const { field } = draft;
  const sign = key === ',' ? '.' : key;
  const before = isRefused ? '' : (draft.typed[field] ?? '');
  if (sign === '.' && (field !== 'load' || before.includes('.'))) return draft;
  const text = before + sign;
  return text.length > LONGEST[field] ? draft : typed(draft, field, text);
}

/** Was the key before the one that takes what was typed, and is it said why it did not? */
export const wasRefused = ({ ui: { lastKey, message } }: Model): boolean =>
  message !== null && (lastKey?.name === 'enter' || lastKey?.name === 'space');

/** One sign less; an emptied field goes back to what was saved. */
export function rubbedOut(draft: Typing, target: EntryTarget, unit: Unit): Typing {
  const { field } = draft;
  const text = draft.typed[field] ?? fieldText(target, null, field, unit);
  const shorter = text.slice(0, -1);
  const rest = { ...draft.typed };
  delete rest[field];
  return shorter === '' ? { ...draft, typed: rest } : typed(draft, field, shorter);
}

/** One rep more or less, or the next load that can be made; the sentence where there is none. */
export function stepped(
  draft: Typing,
  target: EntryTarget,
  unit: Unit,
  by: 1 | -1,
  coach: Pick<Coach, 'nearestLoads'>,
): Typing | string {
  const { field } = draft;
  const text = fieldText(target, draft, field, unit);
  if (field !== 'load') return typed(draft, field, String(Math.max(0, (Number(text) || 0) + by)));
  const quantity = readQuantity(text, unit);
  const near = quantity && coach.nearestLoads(target.exercise, massOf(quantity));
  const next = near && (by > 0 ? near.above : near.below);
  if (next === null) return `No ${by > 0 ? 'heavier' : 'lighter'} load can be made.`;
  return typed(draft, field, massNumber(next, unit));
}

/** The next field, or the one before, around the ends. */
export function movedOn(draft: Typing, target: EntryTarget, by: 1 | -1): Typing {
  const fields = fieldsOf(target.exercise);
  const at = fields.indexOf(draft.field) + by;
  return { ...draft, field: fields.at(at % fields.length) ?? 'count' };
}
