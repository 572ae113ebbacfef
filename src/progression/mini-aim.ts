import type { Bout } from './bout.ts';
import { LIMITS } from './limits.ts';

/**
 * Reps to aim at in the first mini-set: those of last time, else a third of the lead's; 3 to 5
 * (a first mini-set under 3 ends the cluster).
 */
export function miniAim(lead: number, last: Bout | null): number {
  const done = last?.minis[0]?.count ?? Math.floor(lead / 3);
  return Math.max(LIMITS.fewestMiniReps, Math.min(LIMITS.mostMiniReps, done));
}
