import { lastAct } from '../../session/decisions/session-flow.ts';
import type { SessionEvent } from '../../session/events.ts';
import {
  type Act,
  type Acting,
  draftOf,
  type Outcome,
  RUNNER,
  send,
  withDraft,
} from '../outcome.ts';
import type { KeyRow } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { accepts } from './conditions.ts';

/** What an undo says that it took back. */
const ACT_WORDS: Readonly<Partial<Record<SessionEvent['type'], string>>> = {
  'set-started': 'the start',
  'start-withdrawn': 'that you had not started',
  'set-done': 'the set',
  'set-amended': 'the correction',
  'sets-confirmed': 'that the sets are right',
  'set-skipped': 'the skipped set',
  'warm-ups-skipped': 'the skipped warm-ups',
  'exercise-skipped': 'leaving it out',
  'exercise-chosen': 'the change of exercise',
  paired: 'the pair',
  'pair-parted': 'the end of the pair',
  'set-added': 'the added set',
  'day-shortened': 'the cut',
  'cluster-ended': 'the end of the cluster',
  'exercise-replaced': 'the other load or lift',
  'rest-changed': 'the change of the rest',
  paused: 'the pause',
  resumed: 'going on',
  'pain-marked': 'the pain',
  'note-written': 'the note',
  'session-closed': 'the closing',
};

const undo: Act = (acting) =>
  // What was typed and not saved goes first: it is the newest act.
  draftOf(acting.model) ? withDraft(acting, null) : takenBack(acting, RUNNER);

/** Takes the last act back, says which it was, and shows `to`. */
export function takenBack(acting: Acting, to: Screen): Outcome {
  const outcome = send(acting, [{ do: 'undo' }], to);
  const act = acting.model.session && lastAct(acting.model.session);
  const message = act
    ? `Taken back: ${ACT_WORDS[act.type] ?? 'the last act'}. y brings it back.`
    : null;
  return { ...outcome, ui: { ...outcome.ui, message } };
}

export const UNDO: KeyRow = {
  keys: ['u'],
  label: 'undo',
  when: (seen) => (draftOf(seen.model) ? true : accepts(seen, { do: 'undo' })),
  footer: 1,
  tap: { at: 4, says: 'UNDO' },
  press: undo,
};

/** Undo, and undo of an undo. */
export const UNDO_KEYS: readonly KeyRow[] = [
  UNDO,
  {
    keys: ['y'],
    label: 'take the undo back',
    when: (seen) => accepts(seen, { do: 'redo' }),
    footer: 3,
    press: (acting) => send(acting, [{ do: 'redo' }], RUNNER),
  },
];
