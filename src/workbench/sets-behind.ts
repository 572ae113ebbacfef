import type { Result } from '../progression/past.ts';
import { worksOf } from '../session/done-sets.ts';
import type { DoneSet, SessionState } from '../session/state.ts';

/** The sets that a result of this session was made from, in its order, with the ids that corrections name. */
export function setsBehind(
  session: SessionState | undefined,
  { exercise, sets }: Result,
): readonly DoneSet[] {
  const works = session?.exercises.flatMap(worksOf) ?? [];
  const work = works.find(
    ({ judgedBy, prescribed, done }) =>
      (judgedBy ?? prescribed).track === exercise.track && done.length === sets.length,
  );
  return work?.done ?? [];
}
