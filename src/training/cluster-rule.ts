/** Choices about clusters. Ours. */
export const CLUSTER = {
  /** A first mini-set with fewer reps than this ends the cluster. */
  fewestMiniReps: 3,
  /** The first mini-set stops at so many reps, and the later ones at the first's. */
  mostMiniReps: 5,
} as const;

/**
 * Reps at which the next mini-set stops: those of the first one done; before it `expected` (last
 * time's, or a third of the lead's), held within 3 to 5.
 */
export function miniAim(minis: readonly number[], expected: number): number {
  const first = minis[0];
  if (first !== undefined) return first;
  return Math.max(CLUSTER.fewestMiniReps, Math.min(CLUSTER.mostMiniReps, Math.floor(expected)));
}

/** Does the cluster go on? */
export type ClusterVerdict =
  | {
      readonly over: false;
      /** The next mini-set is the last one there can be. */
      readonly lastNext: boolean;
    }
  | { readonly over: true; readonly reason: 'fewer-reps' | 'most-sets' };

/**
 * Whether a cluster is over after its lead set and the mini-sets done: when a mini-set had fewer
 * reps than the first, when the first had fewer than 3, or when the lead and minis make up
 * `mostSets`. A lead without a rep leaves nothing to repeat.
 */
export function clusterVerdict(
  lead: number,
  minis: readonly number[],
  mostSets: number,
): ClusterVerdict {
  const first = minis[0] ?? CLUSTER.fewestMiniReps;
  const isSpent = lead < 1 || first < CLUSTER.fewestMiniReps || minis.some((reps) => reps < first);
  if (isSpent) return { over: true, reason: 'fewer-reps' };
  const sets = 1 + minis.length;
  if (sets >= mostSets) return { over: true, reason: 'most-sets' };
  return { over: false, lastNext: sets + 1 === mostSets };
}
