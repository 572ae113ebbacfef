import type { History } from '../journal/history.ts';
import type { Result } from '../progression/past.ts';
import { worksOf } from '../session/done-sets.ts';

/** Gives the ids of a result's sets, in their order: what a correction names. */
export function setIds({ closed }: Pick<History, 'closed'>): (result: Result) => readonly string[] {
  const sessions = new Map(closed().map((state) => [state.session, state]));
  return ({ session, exercise, sets }) => {
    const works = sessions.get(session)?.exercises.flatMap(worksOf) ?? [];
    const work = works.find(
      ({ judgedBy, prescribed, done }) =>
        (judgedBy ?? prescribed).track === exercise.track && done.length === sets.length,
    );
    return work?.done.map(({ id }) => id) ?? [];
  };
}
