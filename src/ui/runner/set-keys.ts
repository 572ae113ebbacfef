import { presentLoad } from '../../session/aim.ts';
import type { SessionCommand } from '../../session/command.ts';
import { decide } from '../../session/decide.ts';
import { lastAct } from '../../session/decisions/session-flow.ts';
import type { SessionEvent, SetPlace } from '../../session/events.ts';
import { problemText } from '../../text/problem.ts';
import { confirming } from '../as-planned.ts';
import { draftNumbers, entryTarget } from '../entry.ts';
import {
  type Act,
  type Acting,
  ask,
  draftOf,
  type Outcome,
  RUNNER,
  type Seen,
  send,
  show,
  tell,
  withDraft,
} from '../outcome.ts';
import { type Phase, placeOf } from '../phase.ts';
import type { KeyRow } from '../screen.ts';
import { typedCommands } from '../typed-commands.ts';
import type { Screen } from '../ui-state.ts';
import { swapScreen } from './swap-screen.ts';

/** What the session itself says to a command: true, or the sentence why not. */
export function accepts({ model }: Seen, command: SessionCommand): true | string {
  if (!model.session) return 'No session is open.';
  const decided = decide(model.session, command, model.now);
  return decided.ok ? true : problemText(decided.problem);
}

const unitOf = ({ model }: Seen) => model.session?.prescription.unit ?? 'kg';

const main: Act = (acting) => {
  const { phase, model } = acting;
  if (!phase || phase.kind === 'closed') return ask(acting);
  if (model.session?.pausedSince) return send(acting, [{ do: 'resume' }]);
  const typed = typedCommands(acting.model);
  if (typeof typed === 'string') return tell(acting, typed);
  if (phase.kind === 'all-done') {
    const commands: SessionCommand[] = [
      ...typed,
      ...confirming(model.session),
      { do: 'close', how: 'finished' },
    ];
    return send(acting, commands, { kind: 'summary', scroll: 0 });
  }
  if (phase.kind !== 'lifting') {
    return asked(acting, phase.next) ?? send(acting, [...typed, { do: 'start' }], RUNNER);
  }
  const numbers = draftOf(model)?.of === null ? draftNumbers(draftOf(model), unitOf(acting)) : null;
  if (typeof numbers === 'string') return tell(acting, numbers);
  const putDown: SessionCommand = numbers ? { do: 'put-down', numbers } : { do: 'put-down' };
  return send(acting, [...typed, putDown], RUNNER);
};

/** What has to be known before the first set of an exercise: is there pain, which load. */
function asked(acting: Acting, { exercise }: SetPlace): Outcome | null {
  const { session, ui } = acting.model;
  const state = session?.exercises[exercise];
  if (!session || !state || state.done.length > 0) return null;
  const { askPain, hurts } = state.prescribed;
  if ((askPain || hurts) && !ui.painAsked.includes(exercise)) {
    const moment = askPain ? 'last-time' : 'joint';
    const screen = { kind: 'pain', exercise, moment, chosen: 0 } as const;
    const outcome = show(acting, screen);
    return { ...outcome, ui: { ...outcome.ui, painAsked: [...ui.painAsked, exercise] } };
  }
  if (presentLoad(state) !== null) return null;
  const { warnings } = session.prescription;
  const isMissing = warnings.some(
    ({ rule, facts }) => rule === 'gear-missing' && facts.name === state.prescribed.name,
  );
  if (isMissing && !ui.painAsked.includes(exercise)) {
    const outcome = swapScreen(acting, exercise);
    return { ...outcome, ui: { ...outcome.ui, painAsked: [...ui.painAsked, exercise] } };
  }
  return show(acting, { kind: 'load', exercise, purpose: 'first-session', typed: '' });
}

const MAIN_LABELS: Readonly<Record<Phase['kind'], string>> = {
  ready: 'lift',
  lifting: 'put down',
  resting: 'lift now',
  over: 'lift',
  'all-done': 'finish',
  closed: 'summary',
};

/** The same in a word that fits the narrowest box. */
const MAIN_BOXES: Readonly<Record<Phase['kind'], string>> = {
  ready: 'LIFT',
  lifting: 'DOWN',
  resting: 'LIFT',
  over: 'LIFT',
  'all-done': 'FINISH',
  closed: 'DONE',
};

export const MAIN: KeyRow = {
  keys: ['space'],
  label: ({ model, phase }) =>
    model.session?.pausedSince
      ? 'go on'
      : phase?.waitMs
        ? 'wait'
        : MAIN_LABELS[phase?.kind ?? 'ready'],
  footer: 0,
  tap: {
    at: 0,
    says: ({ phase }) => (phase?.waitMs ? 'WAIT' : MAIN_BOXES[phase?.kind ?? 'ready']),
  },
  press: main,
};

const NOTHING_TYPED: Readonly<Record<Phase['kind'], string>> = {
  ready: 'Nothing was typed; space starts the set.',
  lifting: 'Nothing was typed; space puts the set down.',
  resting: 'Nothing was typed; the set is saved as it stands.',
  over: 'Nothing was typed; the set is saved as it stands.',
  'all-done': 'Nothing was typed; space finishes the session.',
  closed: 'Nothing was typed; space starts the set.',
};

const save: Act = (acting) => {
  if (draftOf(acting.model)?.of === null) return main(acting);
  const typed = typedCommands(acting.model);
  if (typeof typed === 'string') return tell(acting, typed);
  const outcome = send(acting, typed, RUNNER);
  // Beside a set that is being lifted the numbers of the one before go out of sight.
  if (acting.phase?.kind !== 'lifting') return outcome;
  return { ...outcome, ui: { ...outcome.ui, message: 'The correction is saved.' } };
};

export const SAVE: KeyRow = {
  keys: ['enter'],
  label: 'save numbers',
  when: (seen) =>
    draftNumbers(draftOf(seen.model), unitOf(seen)) === null
      ? NOTHING_TYPED[seen.phase?.kind ?? 'ready']
      : true,
  footer: 2,
  press: save,
};

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

const takeOffer: Act = (acting) => {
  const { offer } = acting.model;
  if (!offer) return tell(acting, 'There is no offer.');
  const { exercise, by, addsSet } = offer;
  const replace = { do: 'replace', exercise, by, because: 'after-a-miss' } as const;
  return send(acting, addsSet ? [{ do: 'add-set' }, replace] : [replace], RUNNER);
};

const targetOf = ({ model, phase }: Seen) =>
  model.session && phase && entryTarget(model.session, phase, draftOf(model));

/** The rep after the last was tried and did not come up: what was in reserve is known to be nothing. */
const failed: Act = (acting) => {
  const typed = typedCommands(acting.model);
  if (typeof typed === 'string') return tell(acting, typed);
  const target = targetOf(acting);
  if (!target?.of) return ask(acting);
  const numbers = { reserve: 0, failed: true };
  return send(acting, [...typed, { do: 'amend', of: target.of.id, numbers }], RUNNER);
};

/** Undo of an undo, the offer, and the rep that failed. */
export const AFTER_SET: readonly KeyRow[] = [
  {
    keys: ['y'],
    label: 'take the undo back',
    when: (seen) => accepts(seen, { do: 'redo' }),
    footer: 3,
    press: (acting) => send(acting, [{ do: 'redo' }], RUNNER),
  },
  {
    keys: ['o'],
    label: 'take the offer',
    when: ({ model }) => (model.offer ? true : 'There is nothing on offer now.'),
    footer: 3,
    press: takeOffer,
  },
  {
    keys: ['z'],
    label: 'next rep failed',
    when: (seen) => {
      const target = targetOf(seen);
      if (!target?.of) return 'Put the set down first; then z says that the next rep failed.';
      return target.exercise.counts === 'seconds' ? 'A hold has no reps.' : true;
    },
    footer: 6,
    press: failed,
  },
];

/** Seconds by which one key changes a rest: of straight sets, of a cluster. */
const REST_STEP = { straight: 30, cluster: 5 } as const;

const changeRest = (keys: readonly string[], label: string, sign: 1 | -1): KeyRow => ({
  keys,
  label,
  // By a second there is always room: how short a rest may get is told when the key is pressed.
  when: ({ model }) => (model.session?.stage.kind === 'resting' ? true : 'No rest is running.'),
  footer: 7,
  pair: 'longer, shorter rest',
  press: (acting) => {
    const place = acting.phase && placeOf(acting.phase);
    const by = REST_STEP[place?.role === 'mini' ? 'cluster' : 'straight'] * sign;
    return send(acting, [{ do: 'change-rest', by }]);
  },
});

const BETWEEN: readonly Phase['kind'][] = ['ready', 'resting', 'over'];

/** Only in some phases, else the sentence. */
export const during =
  (reason: string, kinds: readonly Phase['kind'][] = BETWEEN) =>
  ({ phase }: Seen): true | string =>
    phase && kinds.includes(phase.kind) ? true : reason;

/** The start, the rest and the cluster that run. */
export const RUNNING: readonly KeyRow[] = [
  {
    keys: ['r'],
    label: 'not started yet',
    when: (seen) => accepts(seen, { do: 'withdraw-start' }),
    footer: 4,
    press: (acting) => send(acting, [{ do: 'withdraw-start' }], RUNNER),
  },
  changeRest(['+', '='], 'longer rest', 1),
  changeRest(['-', '_'], 'shorter rest', -1),
  {
    keys: ['p'],
    label: 'pause or go on',
    when: during('There is nothing to pause.', [...BETWEEN, 'lifting']),
    footer: 8,
    press: (acting) =>
      send(acting, [{ do: acting.model.session?.pausedSince ? 'resume' : 'pause' }]),
  },
  {
    keys: ['e'],
    label: 'end the cluster',
    when: (seen) => accepts(seen, { do: 'end-cluster' }),
    footer: 3,
    press: (acting) => send(acting, [{ do: 'end-cluster' }], RUNNER),
  },
];

export const SETS: readonly KeyRow[] = [
  {
    keys: ['a'],
    label: 'add a set',
    when: (seen) =>
      seen.phase?.kind === 'lifting'
        ? 'A set can be added between sets.'
        : accepts(seen, { do: 'add-set' }),
    footer: 11,
    press: (acting) => send(acting, [{ do: 'add-set' }]),
  },
  {
    keys: ['s'],
    label: 'skip this set',
    when: during('A set can be skipped before it starts.'),
    footer: 11,
    press: (acting) => {
      const place = acting.phase && placeOf(acting.phase);
      const command = place?.role === 'warm-up' ? 'skip-warm-ups' : 'skip-set';
      return send(acting, [{ do: command }], RUNNER);
    },
  },
];
