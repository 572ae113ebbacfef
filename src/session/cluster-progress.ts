import { clusterVerdict } from '../training/effort.ts';
import type { SessionFact } from './events.ts';
import { isCluster } from './next-set.ts';
import type { LiftWork, SessionState } from './state.ts';

/** How far a cluster has come. */
export interface ClusterProgress {
  /** Reps of the lead set; null before it. */
  readonly lead: number | null;
  /** Reps of each mini-set. */
  readonly minis: readonly number[];
  /** The lead set and its mini-sets together. */
  readonly mostSets: number;
  /** Ended, by the rule or by the lifter. */
  readonly over: boolean;
  /** The next mini-set is the last there may be. */
  readonly lastNext: boolean;
}

/** Of an exercise of straight sets: no lead, no mini-sets. */
export function clusterProgress(work: LiftWork): ClusterProgress {
  const [lead, ...minis] = isCluster(work) ? work.done.map(({ count }) => count) : [];
  const mostSets = work.prescribed.minis?.mostSets ?? 0;
  const over = work.clusterEnd !== null;
  const verdict = lead === undefined ? null : clusterVerdict(lead, minis, mostSets);
  const lastNext = !over && verdict !== null && !verdict.over && verdict.lastNext;
  return { lead: lead ?? null, minis, mostSets, over, lastNext };
}

/**
 * What the rule says of the cluster that the lifter is at, and no event says yet: that it is over,
 * or that after a correction it is not. A cluster that the lifter has ended or left stays as it is.
 */
export function clusterFacts(state: SessionState): SessionFact[] {
  const { current: exercise } = state;
  const work = exercise === null ? undefined : state.exercises[exercise];
  if (exercise === null || !work || work.leftOut || work.clusterEnd === 'lifter') return [];
  const { lead, minis, mostSets } = clusterProgress(work);
  if (lead === null) return [];
  const verdict = clusterVerdict(lead, minis, mostSets);
  if (!verdict.over) return work.clusterEnd ? [{ type: 'cluster-resumed', exercise }] : [];
  const { reason } = verdict;
  return reason === work.clusterEnd ? [] : [{ type: 'cluster-ended', exercise, reason }];
}
