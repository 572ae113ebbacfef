/**
 * What a simulated lifter is made of. Strength follows the fitness–fatigue form of Banister (1975):
 * training leaves fitness, which is slow to go, and fatigue, which is quick to go; strength is what
 * the one gives less what the other takes. It is a model for comparing programs with each other,
 * not a forecast for a person.
 */
export interface LifterModel {
  /** Days in which fitness falls to 1/e. 42: memory. */
  readonly fitnessDays: number;
  /** Days in which fatigue falls to 1/e without a deficit. 7: memory. */
  readonly fatigueDays: number;
  /** Units of fitness and of fatigue that a hard set leaves. 1 and 2: memory. */
  readonly fitnessGain: number;
  readonly fatigueGain: number;
  /** Hard sets of a muscle that build fitness in any seven days; all of them tire. Ours, after ACSM 2026 (second-hand). */
  readonly saturation: number;
  /** Fatigue lasts longer in a deficit: its days × (1 + this × loss in % a week). Ours. */
  readonly deficitSlowing: number;
  /** Share of the strength at the start that a unit is worth. Ours: with it twelve weeks without training cost about 8 %. */
  readonly strengthPerUnit: number;
  /** Hard sets a week for each muscle before the first session, without a deficit. Ours. */
  readonly setsBefore: number;
  /** Strength gained by itself, as a share a week; a beginner has some, others none. Ours. */
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
  fitnessDays: 42,
  fatigueDays: 7,
  fitnessGain: 1,
  fatigueGain: 2,
  saturation: 10,
  deficitSlowing: 0.5,
  strengthPerUnit: 0.003,
  setsBefore: 8,
  growth: 0,
  dayNoise: 0.02,
  ratingError: 1,
  endurance: 1,
  setCost: 0.03,
  setCostSeconds: 1200,
  shortRestSeconds: 25,
  weighNoise: 0.006,
};
