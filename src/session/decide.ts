import type { Reading } from '../training/reading.ts';
import { apply } from './apply.ts';
import { clusterFacts } from './cluster-progress.ts';
import type { SessionCommand } from './command.ts';
import { type Decided, refused } from './decisions/decided.ts';
import { amend, close, confirm, putDown, start, withdrawStart } from './decisions/lifting.ts';
import {
  addSet,
  chooseExercise,
  endCluster,
  markPain,
  pair,
  partPair,
  replace,
  shorten,
  skipExercise,
  skipSet,
} from './decisions/planning.ts';
import { changeRest, discard, note, pause, redo, resume, undo } from './decisions/session-flow.ts';
import type { SessionFact } from './events.ts';
import type { SessionState } from './state.ts';

/**
 * What becomes of a command given at an instant: the facts to write, those that a rule adds
 * included, or the sentence why not. The facts belong together and are written at once.
 */
export function decide(state: SessionState, command: SessionCommand, at: Reading): Decided {
  const goesBack = command.do === 'undo' || command.do === 'redo';
  if (state.stage.kind === 'closed' && !goesBack) {
    return refused('The session is closed.', 'Undo the closing to go on with it.');
  }
  // The table is keyed by the command's own name, which the compiler cannot follow.
  const decided = (
    DECISIONS[command.do] as (state: SessionState, command: SessionCommand, at: Reading) => Decided
  )(state, command, at);
  if (!decided.ok || goesBack) return decided;
  return { ok: true, facts: [...decided.facts, ...clusterFacts(after(state, decided.facts, at))] };
}

/** The state that a command would lead to; the same one where it is refused. */
export function afterwards(
  state: SessionState,
  command: SessionCommand,
  at: Reading,
): SessionState {
  const decided = decide(state, command, at);
  return decided.ok ? after(state, decided.facts, at) : state;
}

function after(state: SessionState, facts: readonly SessionFact[], at: Reading): SessionState {
  return facts.reduce<SessionState>(
    (each, fact, index) => apply(each, { ...fact, id: `decided:${index}`, at, zone: state.zone }),
    state,
  );
}

/** Decides one command. */
type Decision<Name extends SessionCommand['do']> = (
  state: SessionState,
  command: Extract<SessionCommand, { do: Name }>,
  at: Reading,
) => Decided;

export const DECISIONS: { readonly [Name in SessionCommand['do']]: Decision<Name> } = {
  start,
  'put-down': putDown,
  'withdraw-start': withdrawStart,
  amend,
  confirm,
  'skip-set': skipSet,
  'skip-exercise': skipExercise,
  'choose-exercise': chooseExercise,
  pair,
  'part-pair': partPair,
  'add-set': addSet,
  'end-cluster': endCluster,
  replace,
  shorten,
  'change-rest': changeRest,
  pause,
  resume,
  'mark-pain': markPain,
  note,
  undo,
  redo,
  close,
  discard,
};
