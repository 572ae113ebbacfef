type Range = readonly [low: number, high: number];

/** Choices about effort. */
export const EFFORT = {
  /** A set that ends with at most so many in reserve is a hard set. Ours: print has no agreed line. */
  hardSetReserve: 4,
  /** Of the reps to failure so much is easy work. Ours. */
  easyShare: 0.6,
  /** More reps in reserve than this are not told well (Hackett 2017). */
  trustedReserve: 5,
} as const;

/** Reps in reserve for each rating of perceived exertion (Zourdos 2016; Helms 2016). 9.5 is not 0.5. */
const RESERVE_OF_RPE: ReadonlyMap<number, Range> = new Map([
  [10, [0, 0]],
  [9.5, [0, 0]],
  [9, [1, 1]],
  [8.5, [1, 2]],
  [8, [2, 2]],
  [7.5, [2, 3]],
  [7, [3, 3]],
  [6, [4, 6]],
  [5, [4, 6]],
]);

/** Reps in reserve that a rating of perceived exertion stands for; null where the scale has no such rating. */
export const reserveOfRpe = (rpe: number): Range | null => RESERVE_OF_RPE.get(rpe) ?? null;

/** Reps in reserve of a set, and whether the lifter said so. */
export interface Reserve {
  readonly reserve: number;
  readonly assumed: boolean;
}

/** What was entered (of a range its low end), or the low end of the wanted reserve, as assumed. */
export function reserveOf(entered: number | Range | null, wanted: Range): Reserve {
  if (entered === null) return { reserve: wanted[0], assumed: true };
  return { reserve: typeof entered === 'number' ? entered : entered[0], assumed: false };
}

/** Reps in reserve as they count when a load is chosen: more than 5 count as 5. */
export const countedReserve = (reserve: number): number => Math.min(reserve, EFFORT.trustedReserve);

/** May a set with so many in reserve tell whether strength is kept or slipping? */
export const tellsStrength = (reserve: number): boolean => reserve <= EFFORT.trustedReserve;

/** Is it a hard set? */
export const isHardSet = (reserve: number, limit: number = EFFORT.hardSetReserve): boolean =>
  reserve <= limit;

/**
 * Reps of a set done past 60 % of its reps to failure: 5 of a set of 12 to failure, the 8th to the
 * 12th. Only counted inside clusters. Ours.
 */
export function hardReps(reps: number, reserve: number): number {
  const easy = Math.floor(roundedOff(EFFORT.easyShare * (reps + reserve)));
  return Math.max(0, reps - easy);
}

/** Takes off what the binary form of 0.6 adds or lacks, so that 60 % of 35 is 21. */
const roundedOff = (value: number): number => Math.round(value * 1e9) / 1e9;

/** The first set of a cluster. */
export interface LeadSet {
  readonly reps: number;
  readonly reserve: number;
}

/** Hard reps of a cluster: every mini-set starts tired, so all its reps are hard. */
export function clusterHardReps(lead: LeadSet, minis: readonly number[]): number {
  return hardReps(lead.reps, lead.reserve) + minis.reduce((sum, reps) => sum + reps, 0);
}

/**
 * Hard sets that a cluster counts for: its hard reps ÷ those of its lead set taken to
 * failure, to the nearest half. Ours.
 */
export function clusterHardSets(lead: LeadSet, minis: readonly number[]): number {
  const toFailure = hardReps(lead.reps + lead.reserve, 0);
  if (toFailure === 0) return 0;
  return Math.round((clusterHardReps(lead, minis) / toFailure) * 2) / 2;
}

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
