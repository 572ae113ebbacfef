import type { SessionState } from '../../session/state.ts';
import { massNumber, massOf, readQuantity } from '../../training/mass.ts';
import { type EntryTarget, entryTarget, fieldsOf, fieldText, putDown } from '../entry.ts';
import type { ActId } from '../keymap.ts';
import { type Act, type Acting, draftOf, send, tell, withDraft } from '../outcome.ts';
import type { Phase } from '../phase.ts';
import { typedCommands } from '../typed-commands.ts';
import type { Draft, Field } from '../ui-state.ts';

/** Longest number that a field takes: `102.25`. */
const LONGEST = { count: 3, reserve: 2, load: 6 } as const;

interface Entering {
  readonly session: SessionState;
  readonly phase: Phase;
  readonly target: EntryTarget;
  readonly draft: Draft;
}

function entering({ model, phase }: Acting): Entering | null {
  const { session } = model;
  const draft = draftOf(model);
  const target = session && phase && entryTarget(session, phase, draft);
  if (!session || !phase || !target) return null;
  const of = target.of?.id ?? null;
  return { session, phase, target, draft: { ...(draft ?? { field: 'count', typed: {} }), of } };
}

/** An act on the numbers of a set; says so where there is no set. */
const onNumbers =
  (change: (entering: Entering, acting: Acting) => Draft | string): Act =>
  (acting) => {
    const now = entering(acting);
    if (!now) return tell(acting, 'There is no set to put numbers on yet.');
    const next = change(now, acting);
    return typeof next === 'string' ? tell(acting, next) : withDraft(acting, next);
  };

const typed = (draft: Draft, field: Field, text: string): Draft => ({
  ...draft,
  typed: { ...draft.typed, [field]: text },
});

const type = onNumbers(({ draft }, { name }) => {
  const { field } = draft;
  const sign = name === ',' ? '.' : name;
  const before = draft.typed[field] ?? '';
  if (sign === '.' && (field !== 'load' || before.includes('.'))) return draft;
  const text = before + sign;
  return text.length > LONGEST[field] ? draft : typed(draft, field, text);
});

const rubOut = onNumbers(({ draft, target, session }) => {
  const { field } = draft;
  const text = draft.typed[field] ?? fieldText(target, null, field, session.prescription.unit);
  const shorter = text.slice(0, -1);
  const rest = { ...draft.typed };
  delete rest[field];
  // An emptied field goes back to what was saved.
  return shorter === '' ? { ...draft, typed: rest } : typed(draft, field, shorter);
});

const step = (by: 1 | -1): Act =>
  onNumbers(({ draft, target, session }, { bench }) => {
    const { unit } = session.prescription;
    const { field } = draft;
    const text = fieldText(target, draft, field, unit);
    if (field !== 'load') return typed(draft, field, String(Math.max(0, (Number(text) || 0) + by)));
    const quantity = readQuantity(text, unit);
    const near = quantity && bench.nearestLoads(target.exercise, massOf(quantity));
    const next = near && (by > 0 ? near.above : near.below);
    if (next === null) return `No ${by > 0 ? 'heavier' : 'lighter'} load can be made.`;
    return typed(draft, field, massNumber(next, unit));
  });

const moveField = (by: 1 | -1): Act =>
  onNumbers(({ draft, target }) => {
    const fields = fieldsOf(target.exercise);
    const at = fields.indexOf(draft.field) + by;
    return { ...draft, field: fields.at(at % fields.length) ?? 'count' };
  });

const moveSet =
  (by: 1 | -1): Act =>
  (acting) => {
    const now = entering(acting);
    const commands = typedCommands(acting.model);
    if (!now) return tell(acting, 'No set was put down yet.');
    if (typeof commands === 'string') return tell(acting, commands);
    const sets = putDown(now.session);
    const named = sets.findIndex(({ set }) => set.id === now.draft.of);
    // The set that is lifted comes after every set that was put down.
    const next = sets[(named < 0 ? sets.length : named) + by];
    if (!next) return tell(acting, by < 0 ? 'This is the first set.' : 'This is the newest set.');
    // What was typed on the way is saved, not lost.
    const draft: Draft = { of: next.set.id, field: 'count', typed: {} };
    return send(acting, commands, { kind: 'runner', draft });
  };

/** What keys do to the numbers of a set. */
export const ENTRY_ACTS = {
  type,
  'rub-out': rubOut,
  more: step(1),
  less: step(-1),
  'next-field': moveField(1),
  'field-before': moveField(-1),
  'set-before': moveSet(-1),
  'set-after': moveSet(1),
} satisfies Partial<Record<ActId, Act>>;
