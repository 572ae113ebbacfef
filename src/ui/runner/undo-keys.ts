import { afterwards } from '../../session/decide.ts';
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
import { phaseOf } from '../phase.ts';
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
  const message = act ? takenBackText(act, acting) : null;
  return { ...outcome, ui: { ...outcome.ui, message } };
}

function takenBackText(act: SessionEvent, { model: { session, now } }: Acting): string {
  const words = `Taken back: ${ACT_WORDS[act.type] ?? 'the last act'}.`;
  const after = session && afterwards(session, { do: 'undo' }, now);
  const phase = after && phaseOf(after, now);
  return act.type === 'set-started' && phase?.kind === 'lifting' && phase.byItself
    ? `${words} Its rest is over meanwhile, so it has begun by itself; + makes the rest longer.`
    : `${words} ctrl-u brings it back.`;
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
    keys: ['ctrl-u'],
    label: 'take the undo back',
    when: (seen) => accepts(seen, { do: 'redo' }),
    footer: 3,
    press: (acting) => send(acting, [{ do: 'redo' }], RUNNER),
  },
];
