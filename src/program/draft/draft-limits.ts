import type { Rest } from '../program.ts';

/** How long rests are, roomy or tight: between sets of a compound, and between exercises. */
export interface Pace {
  readonly compound: Rest;
  readonly between: Rest;
}

/** Choices of a draft. Ours, but for the rest of 3–5 min for heavy work (ACSM 2009). */
export const DRAFT_LIMITS = {
  /** The roomiest pace at which everything fits is taken. */
  paces: [
    { compound: { from: 180, to: 300 }, between: { from: 120, to: 180 } },
    { compound: { from: 180, to: 240 }, between: { from: 90, to: 120 } },
    { compound: { from: 180, to: 180 }, between: { from: 60, to: 90 } },
  ],
  isolationRest: { from: 90, to: 120 },
  compoundSets: [2, 3, 4],
  isolationSets: [2, 3],
  /** Sets of a cluster, the lead set among them. */
  clusterSets: [3, 4, 5],
  /** Fewest and most minutes a session that are drafted for. */
  minutes: [15, 180],
  /** Lifts of one movement that are tried, the lifter's own wishes apart. */
  triedLifts: 3,
  /** A compound with dumbbells lighter than this, in micrograms, is soon too easy: 20 kg. */
  lightDumbbell: 20_000_000_000,
  /** Share of the load that a best points to, for the first session (see the first load of a new range). */
  startShare: 0.95,
  /** Hard sets a week over the fewest that muscles to bring up should have. */
  focusExtra: 2,
} as const;

export const PACES: readonly Pace[] = DRAFT_LIMITS.paces;
