import { pairClash } from '../../training/pairing.ts';
import type { Reading } from '../../training/reading.ts';
import type { SessionCommand } from '../command.ts';
import { isCluster, isOver, nextSet, partnersOf, setsAskedOf } from '../next-set.ts';
import { stageNow } from '../stage-now.ts';
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
  if (state.stage.kind === 'lifting') return refused('A set can be added between sets.');
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

/** Pairs an exercise with the one that the lifter is at, and with those that alternate with that one. */
export function pair(state: SessionState, { exercise }: Command<'pair'>): Decided {
  const here = state.stage.kind === 'lifting' ? state.stage.set : nextSet(state);
  return forExercise(state, exercise, (each) => {
    if (isOver(each)) return refused(`Nothing of ${each.prescribed.name} is left to do.`);
    if (!here || here.exercise === exercise) {
      return refused('An exercise is paired with the one you are at.', 'Choose another one.');
    }
    const exercises = [here.exercise, ...partnersOf(state, here.exercise), exercise];
    if (exercises.length > MOST_TOGETHER) {
      return refused('Three exercises alternate already.', 'Take the pair apart first.');
    }
    const lifts = exercises.flatMap((at) => state.exercises[at]?.prescribed ?? []);
    const clash = pairClash(lifts);
    return clash ? { ok: false, problem: clash } : accepted({ type: 'paired', exercises });
  });
}

/** Sets of more would wait longer than their rest. Ours. */
const MOST_TOGETHER = 3;

export function partPair(state: SessionState, { exercise }: Command<'part-pair'>): Decided {
  return state.pairs.some((each) => each.includes(exercise))
    ? accepted({ type: 'pair-parted', exercise })
    : forExercise(state, exercise, ({ prescribed }) =>
        refused(`${prescribed.name} alternates with no other.`),
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
  // For another lift, and for pain, the set that is lifted ends.
  const ends = because === 'other-lift' || because === 'lighter';
  if (!ends && state.stage.kind === 'lifting') {
    return refused('The load can be changed between sets.');
  }
  return forExercise(state, exercise, (each) =>
    isOver({ ...each, leftOut: false })
      ? refused(`Every set of ${each.prescribed.name} is done.`, 'Add a set first.')
      : accepted({ type: 'exercise-replaced', exercise, by, because }),
  );
}

/** Cuts what is left to the time there is, as it was worked out. */
export function shorten(
  { exercises: states, prescription: { restBetween } }: SessionState,
  { do: _, ...plan }: Command<'shorten'>,
): Decided {
  const isLess = plan.exercises.some(({ exercise, sets, rest }) => {
    const each = states[exercise];
    return each && (sets < setsAskedOf(each) || rest.to < each.prescribed.rest.to);
  });
  const isQuicker = (plan.pairs ?? []).length > 0 || plan.restBetween.to < restBetween.to;
  return isLess || isQuicker
    ? accepted({ type: 'day-shortened', ...plan })
    : refused('What is left fits into that time as it is.');
}

/** Of a warm-up all that are left, of a cluster what is left of it. */
export function skipSet(state: SessionState, _: unknown, at: Reading): Decided {
  // One that was tried and did not come up has no reps, which is worth knowing.
  if (stageNow(state, at).kind === 'lifting') {
    return refused('A set can be skipped before it starts.');
  }
  const place = nextSet(state);
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
