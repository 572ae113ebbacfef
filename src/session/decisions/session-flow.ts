import type { SessionCommand } from '../command.ts';
import type { SessionEvent } from '../events.ts';
import { inForce, isRuleMade, undoneIds } from '../in-force.ts';
import type { SessionState } from '../state.ts';
import { accepted, type Decided, forExercise, refused } from './decided.ts';

type Command<Name extends SessionCommand['do']> = Extract<SessionCommand, { do: Name }>;

export function changeRest({ stage }: SessionState, { by }: Command<'change-rest'>): Decided {
  if (stage.kind !== 'resting') return refused('No rest is running.');
  if (!Number.isInteger(by) || by === 0) {
    return refused('A rest is changed by whole seconds.', 'Give a number other than 0.');
  }
  // What went below no rest at all would only have to be added back, key by key.
  const { from } = stage.running.rest;
  if (by < 0 && from === 0) {
    return refused('The rest is as short as it can be.', 'Space starts the set.');
  }
  return accepted({ type: 'rest-changed', by: Math.max(by, -from) });
}

export function pause({ pausedSince, stage }: SessionState): Decided {
  if (stage.kind === 'all-done') return refused('There is nothing to pause.');
  return pausedSince ? refused('The session is paused already.') : accepted({ type: 'paused' });
}

export function resume({ pausedSince }: SessionState): Decided {
  return pausedSince ? accepted({ type: 'resumed' }) : refused('The session is not paused.');
}

export function note(state: SessionState, { exercise, text }: Command<'note'>): Decided {
  const written = text.trim();
  if (written === '') return refused('The note is empty, so nothing was saved.');
  const fact = { type: 'note-written', exercise, text: written } as const;
  return exercise === null ? accepted(fact) : forExercise(state, exercise, () => accepted(fact));
}

export const discard = (): Decided => accepted({ type: 'session-discarded' });

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
