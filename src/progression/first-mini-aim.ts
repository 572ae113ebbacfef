import { miniAim } from '../training/effort.ts';
import type { Bout } from './bout.ts';

/** Reps to aim at in the first mini-set of a cluster: those of last time, else a third of the lead's. */
export const firstMiniAim = (lead: number, last: Bout | null): number =>
  miniAim([], last?.minis[0]?.count ?? lead / 3);
