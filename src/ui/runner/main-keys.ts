import { presentLoad } from '../../session/aim.ts';
import type { SessionCommand } from '../../session/command.ts';
import type { SetPlace } from '../../session/events.ts';
import { inForce } from '../../session/in-force.ts';
import type { ExerciseState } from '../../session/state.ts';
import { confirming } from '../as-planned.ts';
import { draftNumbers, typedCommands } from '../entry.ts';
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
} from '../outcome.ts';
import type { Phase } from '../phase.ts';
import type { KeyRow } from '../screen.ts';
import { lacksGear, NO_EXERCISE } from './conditions.ts';

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

/** What has to be known before the first set of an exercise: is there pain, which load, or which other lift. */
function asked(acting: Acting, { exercise }: SetPlace): Outcome | null {
  const state = acting.model.session?.exercises[exercise];
  if (!state || state.done.length > 0) return null;
  const { askPain, hurts } = state.prescribed;
  if ((askPain || hurts) && !isAnswered(acting, state)) {
    const moment = askPain ? 'last-time' : 'joint';
    return show(acting, { kind: 'pain', exercise, moment, chosen: 0 });
  }
  if (presentLoad(state) !== null) return null;
  return lacksGear(state)
    ? swapScreen(acting, exercise)
    : show(acting, { kind: 'load', exercise, purpose: 'first-session', typed: '' });
}

/** Was the question answered in this run, and does the answer stand? */
function isAnswered(
  { model: { session, ui } }: Acting,
  { prescribed: { track } }: ExerciseState,
): boolean {
  const standing = new Set(inForce(session?.events ?? []).map(({ id }) => id));
  return ui.answered.some((one) => one.track === track && standing.has(one.by));
}

/** The lifts that may stand in for an exercise. */
export function swapScreen(acting: Acting, exercise: number): Outcome {
  const state = acting.model.session?.exercises[exercise];
  if (!state) return tell(acting, NO_EXERCISE);
  const lifts = acting.coach.alternatives(state.prescribed);
  return show(acting, { kind: 'swap', exercise, lifts, chosen: 0, back: acting.screen });
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
