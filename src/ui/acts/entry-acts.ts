import type { SessionState } from '../../session/state.ts';
import type { ActId } from '../binding.ts';
import { movedOn, rubbedOut, stepped, typedInto } from '../draft.ts';
import { type EntryTarget, entryTarget, setsPutDown } from '../entry.ts';
import { type Act, type Acting, draftOf, send, show, tell, withDraft } from '../outcome.ts';
import { loadWanted, type Phase } from '../phase.ts';
import { typedCommands } from '../typed-commands.ts';
import type { Typing } from '../ui-state.ts';

interface Entering {
  readonly session: SessionState;
  readonly phase: Phase;
  readonly target: EntryTarget;
  readonly draft: Typing;
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
  (change: (entering: Entering, acting: Acting) => Typing | string): Act =>
  (acting) => {
    const now = entering(acting);
    if (!now) return tell(acting, 'There is no set to put numbers on yet.');
    const next = change(now, acting);
    return typeof next === 'string' ? tell(acting, next) : withDraft(acting, next);
  };

const typeReps = onNumbers(({ draft }, { name }) => typedInto(draft, name));

/** Where no load is known a number is the load, until numbers of a set before are being typed. */
const type: Act = (acting) => {
  const { model, phase, name } = acting;
  const wanted = model.session && phase && !draftOf(model) && loadWanted(model.session, phase);
  if (wanted === null || wanted === undefined || wanted === false) return typeReps(acting);
  // In the rest before it the number may belong to the set that was just put down.
  if (phase?.kind === 'resting' || phase?.kind === 'over') return typeReps(acting);
  return show(acting, { kind: 'load', exercise: wanted, purpose: 'first-session', typed: name });
};

const rubOut = onNumbers(({ draft, target, session }) =>
  rubbedOut(draft, target, session.prescription.unit),
);

const step = (by: 1 | -1): Act =>
  onNumbers(({ draft, target, session }, { bench }) =>
    stepped(draft, target, session.prescription.unit, by, bench),
  );

const moveField = (by: 1 | -1): Act => onNumbers(({ draft, target }) => movedOn(draft, target, by));

const moveSet =
  (by: 1 | -1): Act =>
  (acting) => {
    const now = entering(acting);
    const commands = typedCommands(acting.model);
    if (!now) return tell(acting, 'No set was put down yet.');
    if (typeof commands === 'string') return tell(acting, commands);
    const sets = setsPutDown(now.session);
    const named = sets.findIndex(({ set }) => set.id === now.draft.of);
    // The set that is lifted comes after every set that was put down.
    const next = sets[(named < 0 ? sets.length : named) + by];
    if (!next) return tell(acting, by < 0 ? 'This is the first set.' : 'This is the newest set.');
    // What was typed on the way is saved, not lost.
    const draft: Typing = { of: next.set.id, field: 'count', typed: {} };
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
