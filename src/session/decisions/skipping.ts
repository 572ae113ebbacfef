import type { Reading } from '../../training/reading.ts';
import type { SessionCommand } from '../command.ts';
import type { SetPlace } from '../events.ts';
import { isOver } from '../next-set.ts';
import { stageNow } from '../stage-now.ts';
import type { SessionState } from '../state.ts';
import { accepted, type Decided, forExercise, refused } from './decided.ts';

type Command<Name extends SessionCommand['do']> = Extract<SessionCommand, { do: Name }>;

export function skipSet(state: SessionState, _: unknown, at: Reading): Decided {
  const place = presentPlace(state, at);
  if (!place) return refused('There is no set left to skip.');
  const { exercise, role } = place;
  switch (role) {
    case 'warm-up':
      return accepted({ type: 'warm-ups-skipped', exercise });
    case 'straight':
      return accepted({ type: 'set-skipped', ...place });
    case 'lead':
      return accepted({ type: 'exercise-skipped', exercise });
    case 'mini':
      return accepted({ type: 'cluster-ended', exercise, reason: 'lifter' });
  }
}

export function skipWarmUps(state: SessionState, _: unknown, at: Reading): Decided {
  const place = presentPlace(state, at);
  return place?.role === 'warm-up'
    ? accepted({ type: 'warm-ups-skipped', exercise: place.exercise })
    : refused('There is no warm-up set to skip.');
}

export function skipExercise(state: SessionState, { exercise }: Command<'skip-exercise'>): Decided {
  return forExercise(state, exercise, (each) =>
    isOver(each)
      ? refused(`Nothing of ${each.prescribed.name} is left to do.`)
      : accepted({ type: 'exercise-skipped', exercise }),
  );
}

/** Pain leaves out what is left of the exercise, until the lifter chooses or replaces it. */
export function markPain(state: SessionState, { exercise }: Command<'mark-pain'>): Decided {
  return forExercise(state, exercise, (each) =>
    each.pain && each.leftOut
      ? refused(`Pain is marked on ${each.prescribed.name} already.`)
      : accepted({ type: 'pain-marked', exercise }),
  );
}

function presentPlace(state: SessionState, at: Reading): SetPlace | null {
  const now = stageNow(state, at);
  if (now.kind === 'lifting') return now.set;
  return now.kind === 'ready' || now.kind === 'resting' ? now.next : null;
}
