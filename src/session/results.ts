import type { Result } from '../progression/past.ts';
import { worksOf } from './done-sets.ts';
import { localDate } from './local-date.ts';
import { isCluster, setsCounted } from './next-set.ts';
import { hasResult } from './replace-lift.ts';
import type { LiftWork, SessionState } from './state.ts';

/**
 * What the session leaves behind for progression, one result for each track that was trained or on
 * which pain was marked, in the session's order. Of a discarded session: none.
 */
export function resultsOf(state: SessionState): Result[] {
  const { stage, exercises } = state;
  if (stage.kind === 'closed' && stage.how === 'discarded') return [];
  const date = dateOf(state);
  return exercises
    .flatMap(worksOf)
    .filter((work) => hasResult(work) && !lacksLead(work))
    .map((work) => resultOf(work, state, date));
}

/** The local day on which the session was opened. */
export const dateOf = ({ openedAt, zone }: Pick<SessionState, 'openedAt' | 'zone'>) =>
  localDate(openedAt.wall, zone);

function resultOf(work: LiftWork, state: SessionState, date: Result['date']): Result {
  const { session, prescription, openedAt } = state;
  return {
    session,
    start: openedAt.wall,
    date,
    program: prescription.program,
    day: prescription.day,
    exercise: work.judgedBy ?? work.prescribed,
    sets: work.done.map(({ id, load, count, reserve, failed, entered }) => ({
      id,
      load,
      count,
      reserve,
      ...(failed && { failed }),
      entered,
    })),
    finished: isFinished(work),
    pain: work.pain,
    lighter: prescription.lighter,
  };
}

/** A cluster whose lead set was deleted afterwards: its mini-sets alone tell nothing. */
const lacksLead = (work: LiftWork): boolean =>
  isCluster(work) && work.done.length > 0 && work.done[0]?.role !== 'lead';

function isFinished(work: LiftWork): boolean {
  const { done, clusterEnd, prescribed } = work;
  if (prescribed.minis) {
    const ended = clusterEnd !== null && clusterEnd !== 'lifter';
    return ended || done.length >= prescribed.minis.mostSets;
  }
  return work.skipped === 0 && setsCounted(work) >= prescribed.sets.length;
}
