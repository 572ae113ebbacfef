import type { SessionEvent } from '../events.ts';
import { inForce, isRuleMade, undoneIds } from '../in-force.ts';
import type { SessionState } from '../state.ts';
import { accepted, type Decided, refused } from './decided.ts';

/** The last act that stands and can be taken back; null where there is none. */
export function lastAct({ events }: Pick<SessionState, 'events'>): SessionEvent | null {
  const act = inForce(events).findLast((event) => !isRuleMade(event));
  return act && act.type !== 'session-opened' ? act : null;
}

/** Takes back the last act that stands; what a rule made of it goes with it. */
export function undo(state: SessionState): Decided {
  const act = lastAct(state);
  return act ? accepted({ type: 'undone', of: act.id }) : refused('There is nothing to undo.');
}

/** Takes back the last undo, as long as nothing was done after it. */
export function redo({ events }: SessionState): Decided {
  const undone = undoneIds(events);
  const acts = new Set(events.filter(({ type }) => type !== 'undone').map(({ id }) => id));
  const sinceLastAct = events.slice(events.findLastIndex(({ type }) => type !== 'undone') + 1);
  const last = sinceLastAct.findLast(
    (event) => event.type === 'undone' && acts.has(event.of) && !undone.has(event.id),
  );
  return last
    ? accepted({ type: 'undone', of: last.id })
    : refused('There is no undo to take back.');
}
