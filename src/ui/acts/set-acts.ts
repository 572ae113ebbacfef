import { presentLoad } from '../../session/aim.ts';
import type { SessionCommand } from '../../session/command.ts';
import { lastAct } from '../../session/decisions/session-flow.ts';
import type { SessionEvent, SetPlace } from '../../session/events.ts';
import { confirming } from '../as-planned.ts';
import type { ActId } from '../binding.ts';
import { draftNumbers, entryTarget } from '../entry.ts';
import {
  type Act,
  type Acting,
  ask,
  draftOf,
  type Outcome,
  RUNNER,
  send,
  show,
  tell,
  withDraft,
} from '../outcome.ts';
import { placeOf } from '../phase.ts';
import { typedCommands } from '../typed-commands.ts';

/** Seconds by which one key changes a rest: of straight sets, of a cluster. */
const REST_STEP = { straight: 30, cluster: 5 } as const;

const unitOf = ({ model }: Acting) => model.session?.prescription.unit ?? 'kg';

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
  if (state.prescribed.askPain && !ui.painAsked.includes(exercise)) {
    const screen = { kind: 'pain', exercise, moment: 'last-time', chosen: 0 } as const;
    const outcome = show(acting, screen);
    return { ...outcome, ui: { ...outcome.ui, painAsked: [...ui.painAsked, exercise] } };
  }
  if (presentLoad(state) !== null) return null;
  return show(acting, { kind: 'load', exercise, purpose: 'first-session', typed: '' });
}

const save: Act = (acting) => {
  if (draftOf(acting.model)?.of === null) return main(acting);
  const typed = typedCommands(acting.model);
  if (typeof typed === 'string') return tell(acting, typed);
  const outcome = send(acting, typed, RUNNER);
  // Beside a set that is being lifted the numbers of the one before go out of sight.
  if (acting.phase?.kind !== 'lifting') return outcome;
  return { ...outcome, ui: { ...outcome.ui, message: 'The correction is saved.' } };
};

const changeRest =
  (sign: 1 | -1): Act =>
  (acting) => {
    const place = acting.phase && placeOf(acting.phase);
    const by = REST_STEP[place?.role === 'mini' ? 'cluster' : 'straight'] * sign;
    return send(acting, [{ do: 'change-rest', by }]);
  };

const skip: Act = (acting) => {
  const place = acting.phase && placeOf(acting.phase);
  return send(acting, [{ do: place?.role === 'warm-up' ? 'skip-warm-ups' : 'skip-set' }], RUNNER);
};

const undo: Act = (acting) => {
  // What was typed and not saved goes first: it is the newest act.
  if (draftOf(acting.model)) return withDraft(acting, null);
  const outcome = send(acting, [{ do: 'undo' }], RUNNER);
  const act = acting.model.session && lastAct(acting.model.session);
  const message = act
    ? `Taken back: ${ACT_WORDS[act.type] ?? 'the last act'}. y brings it back.`
    : null;
  return { ...outcome, ui: { ...outcome.ui, message } };
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
  'set-added': 'the added set',
  'cluster-ended': 'the end of the cluster',
  'exercise-replaced': 'the other load or lift',
  'rest-changed': 'the change of the rest',
  paused: 'the pause',
  resumed: 'going on',
  'pain-marked': 'the pain',
  'note-written': 'the note',
  'session-closed': 'the closing',
};

/** The rep after the last was tried and did not come up: what was in reserve is known to be nothing. */
const failed: Act = (acting) => {
  const { model, phase } = acting;
  const typed = typedCommands(model);
  if (typeof typed === 'string') return tell(acting, typed);
  const target = model.session && phase && entryTarget(model.session, phase, draftOf(model));
  if (!target?.of) return ask(acting);
  const numbers = { reserve: 0, failed: true };
  return send(acting, [...typed, { do: 'amend', of: target.of.id, numbers }], RUNNER);
};

const takeOffer: Act = (acting) => {
  const { offer, session } = acting.model;
  const place = acting.phase && placeOf(acting.phase);
  const exercise = place?.exercise ?? session?.current;
  if (!offer || exercise === null || exercise === undefined)
    return tell(acting, 'There is no offer.');
  return send(acting, [{ do: 'replace', exercise, by: offer.by, because: 'after-a-miss' }], RUNNER);
};

/** What keys do to the session's sets and rests. */
export const SET_ACTS = {
  main,
  save,
  undo,
  redo: (acting) => send(acting, [{ do: 'redo' }], RUNNER),
  longer: changeRest(1),
  shorter: changeRest(-1),
  'skip-set': skip,
  'take-offer': takeOffer,
  'add-set': (acting) => send(acting, [{ do: 'add-set' }]),
  failed,
  'not-yet': (acting) => send(acting, [{ do: 'withdraw-start' }], RUNNER),
  'end-cluster': (acting) => send(acting, [{ do: 'end-cluster' }], RUNNER),
  pause: (acting) => send(acting, [{ do: acting.model.session?.pausedSince ? 'resume' : 'pause' }]),
} satisfies Partial<Record<ActId, Act>>;
