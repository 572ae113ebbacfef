/**
 * What a simulated lifter is made of. Strength follows the fitness–fatigue form of Banister (1975):
 * training leaves fitness, which is slow to go, and fatigue, which is quick to go; strength is what
 * the one gives less what the other takes. It is a model for comparing programs with each other,
 * not a forecast for a person.
 */
export interface LifterModel {
  /** Days in which fitness falls to 1/e: 38, 95 % interval 17–59 (Hellard 2006). */
  readonly fitnessDays: number;
  /** Days in which fatigue falls to 1/e: 19, 95 % interval 6–32 (Hellard 2006). */
  readonly fatigueDays: number;
  /** Share of strength that training gives in the end, were there no end of sets. Ours: with it twelve weeks without training cost about 7 %. */
  readonly trained: number;
  /** Hard sets of a muscle a week that give half of it: ever less for each set more (the shape: Pelland 2024, second-hand; the number: ours). */
  readonly halfSets: number;
  /** Share of strength that a hard set a week takes in the end. Ours. */
  readonly setFatigue: number;
  /** Hard sets of a muscle in seven days from which each tires more. Ours. */
  readonly manySets: number;
  /** So many times as much. Ours. */
  readonly manyCost: number;
  /** % of body weight a week that may be lost without strength going by it (0.7: Garthe 2011; on average strength gains are as large in a deficit: Murphy & Koehler 2022). */
  readonly spared: number;
  /** Share of strength lost a week for each % a week beyond. Ours. */
  readonly deficitCost: number;
  /** Hard sets a week for each muscle before the first session. Ours. */
  readonly setsBefore: number;
  /** Strength gained by itself, as a share a week; a beginner has much of it, others little. Ours. */
  readonly growth: number;
  /** Standard deviation of strength from one session of a lift to the next, as a share. Ours. */
  readonly dayNoise: number;
  /** Standard deviation of the lifter's own count of reps in reserve (Hackett 2017: about 1). */
  readonly ratingError: number;
  /** Reps beyond the first at a load, compared with the strength curve. Ours. */
  readonly endurance: number;
  /** Share of strength that a set to failure costs for the sets after it. Ours. */
  readonly setCost: number;
  /** Seconds in which that cost falls to 1/e. Ours. */
  readonly setCostSeconds: number;
  /** Seconds in which the reps just spent fall to 1/e: after 10 s a third is back. Ours. */
  readonly shortRestSeconds: number;
  /** Standard deviation of a weigh-in, as a share of body weight (water, food). Ours. */
  readonly weighNoise: number;
}

export const LIFTER_MODEL: LifterModel = {
  fitnessDays: 38,
  fatigueDays: 19,
  trained: 0.2,
  halfSets: 5,
  setFatigue: 0.0045,
  manySets: 12,
  manyCost: 2,
  spared: 0.7,
  deficitCost: 0.002,
  setsBefore: 8,
  growth: 0.0005,
  dayNoise: 0.02,
  ratingError: 1,
  endurance: 1,
  setCost: 0.03,
  setCostSeconds: 1200,
  shortRestSeconds: 25,
  weighNoise: 0.006,
};

/** A kind of lifter: what it changes of the model, and how far its growth is known. */
interface LifterKind {
  readonly does: string;
  readonly changes: Partial<LifterModel>;
  /** Standard deviation of growth between lifters of the kind. Ours. */
  readonly growthSpread: number;
}

/**
 * Growth by kind: ours, within what ACSM 2009 gives for months (about 40 % in the untrained, 16 % in
 * the trained). A lean lifter has less to lose from: ours, after ISSN 2017 (the leaner, the slower).
 */
export const LIFTER_KINDS = {
  novice: { does: 'in the first year', changes: { growth: 0.01 }, growthSpread: 0.003 },
  trained: { does: 'trained for years', changes: {}, growthSpread: 0.0008 },
  lean: {
    does: 'trained and lean',
    changes: { spared: 0.3, deficitCost: 0.004 },
    growthSpread: 0.0008,
  },
} as const satisfies Record<string, LifterKind>;

export type LifterKindName = keyof typeof LIFTER_KINDS;
