import type { SessionCommand } from '../command.ts';
import { isCluster, isOver, nextSet } from '../next-set.ts';
import type { SessionState } from '../state.ts';
import { accepted, type Decided, forExercise, refused } from './decided.ts';

type Command<Name extends SessionCommand['do']> = Extract<SessionCommand, { do: Name }>;

export function chooseExercise(
  state: SessionState,
  { exercise }: Command<'choose-exercise'>,
): Decided {
  return forExercise(state, exercise, (each) =>
    isOver({ ...each, leftOut: false })
      ? refused(`${each.prescribed.name} is done.`, 'Choose one with sets left.')
      : accepted({ type: 'exercise-chosen', exercise }),
  );
}

/** Adds to the exercise that the lifter is at, also when its last set is done. */
export function addSet(state: SessionState): Decided {
  const exercise = state.current ?? nextSet(state)?.exercise ?? 0;
  return forExercise(state, exercise, (each) =>
    isCluster(each)
      ? refused(
          'A cluster ends by its own rule, so no set can be added to it.',
          'Choose an exercise of straight sets.',
        )
      : accepted({ type: 'set-added', exercise }),
  );
}

export function endCluster(state: SessionState): Decided {
  const { stage } = state;
  const next = stage.kind === 'lifting' ? stage.set : nextSet(state);
  return next?.role === 'mini'
    ? accepted({ type: 'cluster-ended', exercise: next.exercise, reason: 'lifter' })
    : refused('No cluster is under way.', 'Skip the set or the exercise instead.');
}

export function replace(
  state: SessionState,
  { exercise, by, because }: Command<'replace'>,
): Decided {
  return forExercise(state, exercise, (each) =>
    isOver({ ...each, leftOut: false })
      ? refused(`Every set of ${each.prescribed.name} is done.`, 'Add a set first.')
      : accepted({ type: 'exercise-replaced', exercise, by, because }),
  );
}
