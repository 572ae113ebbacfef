/**
 * The constants of the strength estimate. Logarithms of strength, so 0.01 is one percent. Chosen on
 * one generator of made lifters, held against another (`npm run figures`); those without a source
 * are ours.
 */
export const STRENGTH_MODEL = {
  /**
   * What the wandering and the luck of a day may be; how much each counts is learned from the
   * lifter's own results, over all lifts together. Standard deviations: of the level and of the
   * weekly slope for a week, and of a day (2–3 % within a week; 4.2 % between tests, Grgic 2020).
   */
  level: [0.002, 0.007],
  slope: [0.0002, 0.001],
  luck: [0.013, 0.022, 0.037],
  /** Before anything is known of a lift's course: the slope a week. */
  slopeSpread: 0.005,
  /** Before anything is known of a lift's strength. */
  levelSpread: 0.3,
  /** Each set is so much weaker than the one before, after two to five minutes. */
  fall: 0.025,
  fallSpread: 0.015,
  /** The curve between reps and load is a lifter's own: other tracks of a lift lie apart by so much. */
  trackSpread: 0.04,
  /** Reps to failure are told to about so many, growing away from failure (Hackett 2017: 1 rep to 5, over 2 from 7). */
  toldReps: 0.7,
  toldRepsPerReserve: 0.3,
  unratedReps: 1.6,
  /** The lifts of one lifter go the same way (food, sleep, age), but for so much. */
  apart: 0.025,
  /** What is wrong in the same way each time is no noise: added to the error of a change. */
  repeating: 0.009,
  /** The same, of all lifts together. */
  repeatingTogether: 0.004,
  /** Degrees of freedom of the tails: a bad day is no evidence. */
  tails: 4,
} as const;

/** One setting of what is learned. */
export interface Setting {
  readonly level: number;
  readonly slope: number;
  readonly luck: number;
}

/** All settings that are weighed against each other. */
export const SETTINGS: readonly Setting[] = STRENGTH_MODEL.level.flatMap((level) =>
  STRENGTH_MODEL.slope.flatMap((slope) =>
    STRENGTH_MODEL.luck.map((luck) => ({ level, slope, luck })),
  ),
);
