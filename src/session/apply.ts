import { changeBy } from './changes.ts';
import type { SessionEvent } from './events.ts';
import { inForce } from './in-force.ts';
import { openSession } from './open-session.ts';
import { settle } from './settle.ts';
import type { SessionState } from './state.ts';

/**
 * The state after one more event. An undo folds anew without the act it names.
 * @throws RangeError when there is no state and the event is not an opening.
 */
export function apply(state: SessionState | null, event: SessionEvent): SessionState {
  const events = state ? [...state.events, event] : [event];
  const next = event.type === 'undone' ? fold(events) : step(state, event);
  if (!next) throw new RangeError(`A session begins with its opening, not with ${event.type}.`);
  return { ...next, events, lastAt: event.at };
}

/** The state after all events in order; null where none of them opens a session. */
export function fold(events: readonly SessionEvent[]): SessionState | null {
  const last = events.at(-1);
  const state = inForce(events).reduce<SessionState | null>(step, null);
  return state && last ? { ...state, events, lastAt: last.at } : null;
}

function step(state: SessionState | null, event: SessionEvent): SessionState | null {
  if (!state) return event.type === 'session-opened' ? settle(openSession(event)) : null;
  return settle(changeBy(state, event));
}
