import type { SessionCommand } from '../command.ts';
import type { Decided } from '../decide.ts';
import type { SessionState } from '../state.ts';
import { accepted, forExercise, refused } from './decided.ts';

type Command<Name extends SessionCommand['do']> = Extract<SessionCommand, { do: Name }>;

export function changeRest({ stage }: SessionState, { by }: Command<'change-rest'>): Decided {
  if (stage.kind !== 'resting') return refused('No rest is running.');
  if (!Number.isInteger(by) || by === 0) {
    return refused('A rest is changed by whole seconds.', 'Give a number other than 0.');
  }
  return accepted({ type: 'rest-changed', by });
}

export function pause({ pausedSince }: SessionState): Decided {
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

export function close({ stage }: SessionState, { how }: Command<'close'>): Decided {
  return how === 'finished' && stage.kind !== 'all-done'
    ? refused('Some sets are neither done nor left out.', 'Close the session as it is.')
    : accepted({ type: 'session-closed', how });
}

export const discard = (): Decided => accepted({ type: 'session-discarded' });
