import type { Rest } from '../program.ts';

/** How long rests are, roomy or tight: between sets of a compound, and between exercises; and whether sets alternate. */
export interface Pace {
  readonly compound: Rest;
  readonly between: Rest;
  readonly pairs: boolean;
}

/** The roomiest pace at which least is given up is taken. Heavy work: 3–5 min (ACSM 2009); else ours. */
export const PACES: readonly [Pace, ...Pace[]] = [
  { compound: { from: 180, to: 300 }, between: { from: 120, to: 180 }, pairs: false },
  { compound: { from: 180, to: 240 }, between: { from: 90, to: 120 }, pairs: false },
  { compound: { from: 180, to: 180 }, between: { from: 60, to: 90 }, pairs: false },
  { compound: { from: 180, to: 180 }, between: { from: 60, to: 90 }, pairs: true },
];

/** Choices of a draft. Ours, but for what names another source. */
export const DRAFT_LIMITS = {
  isolationRest: { from: 90, to: 120 },
  /** Of compounds of many reps, which are light. */
  lightRest: { from: 120, to: 180 },
  /** Fewest and most sets of a lift; of a cluster the lead set is among them. */
  compoundSets: [2, 4],
  isolationSets: [2, 3],
  clusterSets: [3, 5],
  /** Lifts a day at most. */
  dayLifts: 8,
  /** Fewest and most minutes a session that are drafted for. */
  minutes: [15, 180],
  /** A compound with dumbbells lighter than this, in micrograms, is soon too easy: 20 kg. */
  lightDumbbell: 20_000_000_000,
  /** Share of the load that a best points to, for the first session. */
  startShare: 0.95,
  /** The same where the best is of another lift. */
  substituteShare: 0.9,
  /** Hard sets a week over the fewest that muscles to bring up should have. */
  focusExtra: 2,
} as const;
