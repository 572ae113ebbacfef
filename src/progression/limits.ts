/**
 * The numbers that the rules of progression use. Those without a source are ours: choices made
 * here, kept in one place so that they can be read and changed.
 */
export const LIMITS = {
  /** The next load is the first loadable one at least this share above the present one. Ours. */
  smallestStep: 0.01,
  /** A jump is at most this share, or one step where the step is larger (ACSM 2009: 2–10 %). */
  largestJump: 0.1,
  /** The same while the load is a guess: in a first session, and after one that left much in reserve. Ours. */
  jumpAfterGuess: 0.25,
  /** Two steps of a light lift are more than that: up to this share they are taken while every set leaves much in reserve. Ours. */
  twoStepsWhileLight: 0.125,
  /** A first set with so many in reserve was too light. Ours. */
  tooEasyReserve: 4,
  /** Sets at most in which a first session goes up to the right load. Ours. */
  setsToFind: 8,
  /** A load goes up where each set reaches the low end there with these odds. Ours. */
  upOdds: 0.7,
  /** A range that ends here or lower is a plan of heavy sets: set 1 never aims past it. Common practice. */
  heavyReps: 3,
  /** Where the next load is far away, set 1 aims on to this many reps at most. Ours. */
  mostReps: 20,
  mostRepsIsolation: 30,
  mostSeconds: 90,
  /** At those reps one goes up all the same when this share of the low end is there. Ours. */
  landingShare: 2 / 3,
  /** Sessions for which the low end stays at that share after such a landing. Ours. */
  landingSessions: 6,
  /** A heavier load given up within so many sessions was a try that failed. Ours. */
  shortTry: 4,
  /** After so many tries given up, two sessions in a row are to open the gate to a load. Ours. */
  triesToBelieve: 2,
  /** An ease goes to the loadable load at or below this share. Common practice. */
  easeTo: 0.95,
  /** After a set far off its aim the load follows what it tells, but not under this share. Ours. */
  missTo: 0.8,
  /** Where the ease would be a longer way down than `largestJump`, only a first set under this share of the low end counts as a miss. Ours. */
  coarseMissLine: 0.7,
  /** Many sets missed so many sessions running, a load is eased although set 1 was done. Ours. */
  manyMissesHeld: 3,
  /** Missed so many sessions running, a load is eased however long the way down. Ours. */
  missesHeld: 4,
  /** After pain, an easier load is at or below this share. Ours. */
  painTo: 0.8,
  /** Step of a body weight lift that may be taken without knowing body weight, in kg. Ours. */
  blindStepKg: 5,
  /** Bands help where at least this share of the body hangs or is pressed: no one ties a band to a crunch. Ours. */
  assistedShare: 0.5,
  /** One rep is worth this many seconds of a timed hold. Ours. */
  secondsPerRep: 5,
  /** So many sessions, the latest ones, tell what a lift shows lately. Ours. */
  latestSessions: 3,
  /** A new rep range starts at this share of what the estimate gives. Ours. */
  newRangeTo: 0.95,
  /**
   * A loss over this share, with these odds, is slipping: asked some fifty times in a cut, odds of
   * 0.9 alone cried wolf to 11 of 200 lifters who held through good and bad weeks, these to 7. Ours.
   */
  slip: 0.02,
  slipOdds: 0.93,
  slipDays: 56,
  slipSessions: 4,
  /** Of two lifts one alone would make the mean. Ours. */
  liftsTogether: 3,
  /** Sets of a lifter's own table that give this share of its best of the day are work sets. Ours. */
  nearBest: 0.9,
  /** So many days before a change begins still tell where it began. Ours. */
  strengthDaysBefore: 28,
  /** Direct hard sets a week that a dropped set must leave each muscle (Iversen 2021's minimum; as the floor: ours). */
  fewestWeeklySets: 4,
  /** A session never has fewer sets of an exercise than this, lighter weeks and returns aside. Ours. */
  fewestSets: 2,
  /** A last set to a rep that fails is offered so often, and of a lift that was done so many times. Ours. */
  daysBetweenTestSets: 6,
  daysBetweenTestSetsOfLift: 24,
  sessionsBeforeTestSet: 4,
  dropEveryDays: 14,
  /** The lifter's no to a dropped set holds for so many days. Ours. */
  dropRefusedDays: 21,
  /** Days by which a lift's turn may come late without its lifter having been away. Ours. */
  lateDays: 3,
  /** A dropped set comes back after this many sessions that do not slip. Ours. */
  steadySessions: 3,
  lighterWeekDays: 7,
  lighterWeekEveryDays: 28,
  /** More load for a cluster asks for so many mini-sets. Ours. */
  minisForUp: 3,
} as const;
