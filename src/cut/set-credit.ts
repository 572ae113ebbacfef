import type { Result } from '../progression/past.ts';
import { clusterHardReps, clusterHardSets, isHardSet, reserveOf } from '../training/effort.ts';

/**
 * Hard sets that an exercise of a session counts for: straight sets close enough to failure (where
 * no effort was given, at the low end of what was asked), timed holds that reached the low end of
 * their range, a cluster by its hard reps. A lift done one side at a time counts once.
 */
export function hardSetsOf(result: Result): number {
  const { exercise, sets } = result;
  const [low] = exercise.range;
  if (exercise.style === 'cluster') {
    const cluster = clusterOf(result);
    return cluster ? clusterHardSets(cluster.lead, cluster.minis) : 0;
  }
  if (exercise.counts === 'seconds') return sets.filter(({ count }) => count >= low).length;
  return sets.filter(
    ({ count, reserve }) => count > 0 && isHardSet(reserveOf(reserve, exercise.reserve).reserve),
  ).length;
}

/** Hard reps of a cluster; 0 for straight sets, where they are not counted. */
export function hardRepsOfClusters(result: Result): number {
  const cluster = result.exercise.style === 'cluster' ? clusterOf(result) : null;
  return cluster ? clusterHardReps(cluster.lead, cluster.minis) : 0;
}

function clusterOf({ exercise, sets: [lead, ...minis] }: Result) {
  if (!lead) return null;
  const { reserve } = reserveOf(lead.reserve, exercise.reserve);
  return { lead: { reps: lead.count, reserve }, minis: minis.map(({ count }) => count) };
}
