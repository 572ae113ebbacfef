import { isCluster, isOver, plannedSets } from '../session/next-set.ts';
import { setsCountedIn } from '../session/results.ts';
import type { ExerciseState, SessionState } from '../session/state.ts';
import { type Line, span } from './line.ts';

export const MARKS = { done: '■', now: '◧', open: '□', left: '·' } as const;

const setsOpen = (exercise: ExerciseState): number =>
  isOver(exercise)
    ? 0
    : Math.max(0, plannedSets(exercise) - exercise.done.length - exercise.skipped);

const setsDone = ({ done, earlier }: ExerciseState): number =>
  earlier.reduce((sum, work) => sum + work.done.length, done.length);

/** Work sets still to come in the whole session; a cluster counts as one, as it does everywhere. */
export const setsLeft = (session: SessionState): number =>
  session.exercises.reduce(
    (sum, one) => sum + (isCluster(one) ? Math.min(1, setsOpen(one)) : setsOpen(one)),
    0,
  );

/**
 * The session as one line: a mark for each set, the exercises apart from each other. Where that
 * is too wide, the number of sets done of all.
 */
export function sessionLine(session: SessionState, current: number | null, columns: number): Line {
  const parts = session.exercises.map((exercise, index) => marksOf(exercise, index === current));
  const text = parts.filter((part) => part !== '').join(' ');
  if (text.length <= columns) return [span(text, 'drawn')];
  const done = setsCountedIn(session);
  const short = `${done} of ${done + setsLeft(session)} done`;
  return short.length <= columns ? [span(short)] : [];
}

function marksOf(exercise: ExerciseState, isCurrent: boolean): string {
  const open = setsOpen(exercise);
  const now = isCurrent && open > 0 ? 1 : 0;
  return (
    MARKS.done.repeat(setsDone(exercise)) +
    MARKS.left.repeat(exercise.skipped) +
    MARKS.now.repeat(now) +
    MARKS.open.repeat(open - now)
  );
}
