import type { SessionState } from '../../session/state.ts';
import { movedOn, rubbedOut, stepped, typedInto, wasRefused } from '../draft.ts';
import { type EntryTarget, entryTarget, setsPutDown, typedCommands } from '../entry.ts';
import {
  type Act,
  type Acting,
  draftOf,
  type Seen,
  send,
  show,
  tell,
  withDraft,
} from '../outcome.ts';
import { loadWanted, type Phase } from '../phase.ts';
import { type KeyRow, typing } from '../screen.ts';
import type { Typing } from '../ui-state.ts';
import { gearLackText, lacksGear } from './conditions.ts';

interface Entering {
  readonly session: SessionState;
  readonly phase: Phase;
  readonly target: EntryTarget;
  readonly draft: Typing;
}

function entering({ model, phase }: Seen): Entering | null {
  const { session } = model;
  const draft = draftOf(model);
  const target = session && phase && entryTarget(session, phase, draft);
  if (!session || !phase || !target) return null;
  const of = target.of?.id ?? null;
  return { session, phase, target, draft: { ...(draft ?? { field: 'count', typed: {} }), of } };
}

const NO_SET = 'There is no set to put numbers on yet.';

const hasNumbers = (seen: Seen): true | string => (entering(seen) ? true : NO_SET);

/** An act on the numbers of a set; says so where there is no set. */
const onNumbers =
  (change: (entering: Entering, acting: Acting) => Typing | string): Act =>
  (acting) => {
    const now = entering(acting);
    if (!now) return tell(acting, NO_SET);
    const next = change(now, acting);
    return typeof next === 'string' ? tell(acting, next) : withDraft(acting, next);
  };

const typeReps = onNumbers(({ draft }, { name, model }) =>
  typedInto(draft, name, wasRefused(model)),
);

/** Where no load is known a number is the load, until numbers of a set before are being typed. */
const typeNumber: Act = (acting) => {
  const { model, phase, name } = acting;
  const wanted = model.session && phase && !draftOf(model) && loadWanted(model.session, phase);
  if (wanted === null || wanted === undefined || wanted === false) return typeReps(acting);
  // In the rest before it the number may belong to the set that was just put down.
  if (phase?.kind === 'resting' || phase?.kind === 'over') return typeReps(acting);
  const state = model.session?.exercises[wanted];
  if (state && lacksGear(state)) return tell(acting, gearLackText(state.prescribed.name));
  return show(acting, { kind: 'load', exercise: wanted, purpose: 'first-session', typed: name });
};

const { type, rubOut } = typing(
  ['.', ','],
  'type reps',
  typeNumber,
  onNumbers(({ draft, target, session }) => rubbedOut(draft, target, session.prescription.unit)),
);

const stepKey = (key: 'up' | 'down', label: string, by: 1 | -1): KeyRow => ({
  keys: [key],
  label,
  when: hasNumbers,
  footer: 4,
  pair: 'more, less',
  tap: by > 0 ? { at: 3, says: '+' } : { at: 2, says: '−' },
  press: onNumbers(({ draft, target, session }, { coach }) =>
    stepped(draft, target, session.prescription.unit, by, coach),
  ),
});

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

/** The numbers of the newest set, or of the one that is lifted. */
export const NUMBERS: readonly KeyRow[] = [
  {
    ...type,
    when: (seen) => {
      const { model, phase } = seen;
      const asksLoad = model.session && phase && loadWanted(model.session, phase) !== null;
      return asksLoad ? true : hasNumbers(seen);
    },
  },
  { ...rubOut, when: hasNumbers },
  stepKey('up', 'one more', 1),
  stepKey('down', 'one less', -1),
  {
    keys: ['right', 'tab'],
    label: 'next number',
    when: hasNumbers,
    footer: 5,
    press: moveField(1),
  },
  { keys: ['left', 'shift-tab'], label: 'number before', when: hasNumbers, press: moveField(-1) },
];

/** Those of the sets before. */
export const OLDER_SETS: readonly KeyRow[] = [
  {
    keys: ['b'],
    label: 'earlier set',
    when: ({ model }) =>
      model.session && setsPutDown(model.session).length > 0
        ? true
        : 'There is no set before this one.',
    footer: 6,
    press: moveSet(-1),
  },
  {
    keys: ['v'],
    label: 'later set',
    when: ({ model }) => (draftOf(model)?.of ? true : 'This is the newest set.'),
    press: moveSet(1),
  },
];
