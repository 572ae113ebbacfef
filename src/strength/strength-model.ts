/**
 * The constants of the strength estimate. Logarithms of strength, so 0.01 is one percent. Chosen on
 * made lifters of three kinds, by how likely they make what was true; held against others of these
 * and against a fourth kind (`npm run figures`). Those without a source are ours.
 */
export const STRENGTH_MODEL = {
  /**
   * What the wandering and the luck of a day may be; how much each counts is learned from the
   * lifter's own results, over all lifts together. Standard deviations: of the level for a week, of
   * all lifts together and of one by itself; of a week's change of the weekly slope; of the form of
   * these days; and of one lift's day (2–3 % within a week; 4.2 % between tests, Grgic 2020). A
   * calm setting beside these, with telling that wanders twice as much, made the bands of calm
   * lifters a fifth narrower, and those of lifters whose lifts go apart slowly held the truth 68 times
   * in 100, not 73: sixteen weeks do not tell one from the other.
   */
  shared: [0.003],
  own: [0.004, 0.01],
  slope: [0.0004],
  form: [0.003, 0.014],
  luck: [0.025, 0.04],
  /** Good and bad form lasts so many days. */
  formDays: 7,
  /** Before anything is known of a lift's course: the slope a week. */
  slopeSpread: 0.0035,
  /**
   * Strength of all lifts, or of one, can make a step that stays (a diet begun in earnest, a month in
   * bed, a new way to squat), and form one that passes (an illness, bad nights): so often in a week,
   * and by about so much. A step that is taken for a slope would go on where it did not.
   */
  jump: 0.06,
  jumpOfOne: 0.1,
  jumpsAWeek: 0.03,
  dip: 0.05,
  dipsAWeek: 0.08,
  /** A day whose lifts together are so far off, in variances, may be either; a lift by itself so far. */
  off: 3,
  offAlone: 7,
  /** A lift first seen so many days after the day that strength is compared with, or fewer, is followed back to it. */
  baseReach: 10,
  /** Before anything is known of a lift's strength. */
  levelSpread: 0.3,
  /** Each set is so much weaker than the one before, after two to five minutes. */
  fall: 0.025,
  fallSpread: 0.015,
  /** The luck of one set. */
  setNoise: 0.02,
  /** The curve between reps and load is a lifter's own: other tracks of a lift lie apart by so much. */
  trackSpread: 0.04,
  /** Reps to failure are told to about so many, growing away from failure (Hackett 2017: 1 rep to 5, over 2 from 7). */
  toldReps: 0.7,
  toldRepsPerReserve: 0.3,
  unratedReps: 1.6,
  /** A set that ended with a failed rep: only what of a rep was left over is not known. */
  failedReps: 0.35,
  /** How much too high or low a lifter tells reserve, in reps: before anything is known, and its wandering in a week. */
  toldBias: 0.8,
  /**
   * One rep below ten is about so much of strength. The same for every set: by the curve, which gives
   * some reps more, the telling would be learned from a change of reps, and cannot be.
   */
  perToldRep: 0.027,
  toldBiasAWeek: 0.06,
  /** What is wrong in the same way each time is no noise: added to the error of a change. */
  repeating: 0.005,
  /** The same, of all lifts together. */
  repeatingTogether: 0.004,
  /** Degrees of freedom of the tails: a bad day is no evidence. */
  tails: 4,
} as const;

/** One setting of what is learned. */
export interface Setting {
  readonly shared: number;
  readonly own: number;
  readonly slope: number;
  readonly form: number;
  readonly luck: number;
}

const combined = <T>(lists: readonly (readonly T[])[]): T[][] =>
  lists.reduce<T[][]>(
    (found, list) => found.flatMap((each) => list.map((value) => [...each, value])),
    [[]],
  );

/** All settings that are weighed against each other. */
export const SETTINGS: readonly Setting[] = combined<number>([
  STRENGTH_MODEL.shared,
  STRENGTH_MODEL.own,
  STRENGTH_MODEL.slope,
  STRENGTH_MODEL.form,
  STRENGTH_MODEL.luck,
]).map(([shared = 0, own = 0, slope = 0, form = 0, luck = 0]) => ({
  shared,
  own,
  slope,
  form,
  luck,
}));
