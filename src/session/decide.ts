import type { Reading } from '../training/reading.ts';
import { apply } from './apply.ts';
import { clusterFacts } from './cluster-progress.ts';
import type { SessionCommand } from './command.ts';
import { type Decided, refused } from './decisions/decided.ts';
import { DECISIONS } from './decisions/decisions.ts';
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

function after(state: SessionState, facts: readonly SessionFact[], at: Reading): SessionState {
  return facts.reduce<SessionState>(
    (each, fact, index) => apply(each, { ...fact, id: `decided:${index}`, at, zone: state.zone }),
    state,
  );
}
