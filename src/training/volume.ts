import { clusterHardSets } from './effort.ts';
import { MUSCLES, type Muscle, type Shares } from './lift.ts';

/** Work for the muscles of one lift. */
export interface VolumeEntry {
  readonly trains: Shares;
  readonly hardSets: number;
}

/** Hard sets for each muscle trained: a set counts whole for a direct muscle, half for an indirect one (Pelland 2024). */
export function weeklyVolume(entries: Iterable<VolumeEntry>): Map<Muscle, number> {
  const volume = new Map<Muscle, number>();
  for (const { trains, hardSets } of entries) {
    for (const muscle of MUSCLES) {
      const share = trains[muscle];
      if (share) volume.set(muscle, (volume.get(muscle) ?? 0) + share * hardSets);
    }
  }
  return volume;
}

/**
 * Hard sets that a cluster is planned to count for: the lead at the middle of its range (rounded
 * down) to failure, mini-sets of a third of that, and every set it may have. Ours.
 */
export function plannedClusterHardSets(
  [low, high]: readonly [low: number, high: number],
  mostSets: number,
): number {
  const reps = Math.floor((low + high) / 2);
  const minis = Array<number>(Math.max(0, mostSets - 1)).fill(Math.floor(reps / 3));
  return clusterHardSets({ reps, reserve: 0 }, minis);
}
