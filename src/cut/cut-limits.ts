/**
 * The numbers that watching a cut uses. Those without a source are ours: choices made here, kept
 * in one place so that they can be read and changed.
 */
export const CUT_LIMITS = {
  /** A cut that was left for this many days has ended; the next session begins a new one. Ours. */
  endedAfterDays: 28,
  /** Sessions of so many days before the cut count towards what strength is compared with. Ours. */
  daysBefore: 28,
  /** Strength kept is told from this many counted sessions of a track on. Ours. */
  keptSessions: 4,
  /** A lift not trained for so many days is not part of what is kept now. Ours. */
  presentDays: 28,

  /** The first days of a cut lose water and are left out of the rate. Ours. */
  waterDays: 7,
  rateWindowDays: 21,
  /** Window where body weight follows a monthly cycle. Ours. */
  monthlyWindowDays: 28,
  /** Weeks that can be compared with those of four weeks before, at least. Ours. */
  fewestCycleWeeks: 2,
  fewestWeighIns: 7,
  fewestDays: 10,
  /** No word on the rate before this day of the cut. Ours. */
  rateVerdictFromDay: 21,
  /** Above this, in percent a week, the lifter is told to see a doctor if it was not meant. Ours. */
  cautionRate: 1.5,
  /** Losing at most this share of the slowest rate planned hardly moves. Ours. */
  standingShare: 0.5,
  /** More work is only proposed at a rate up to this, in percent a week (Helms 2014: 0.5–1 %). */
  fastestForMore: 1,

  /** The verdict looks at the work of so many days, as two weeks. Ours. */
  workDays: 14,
  /** A muscle counts as trained on a day from so many hard sets on. Ours. */
  setsForDay: 1,

  /** Under this share of the strength at the start, with no set left to drop, a pause is due. Ours. */
  pauseUnderKept: 0.95,
  /** So long into a cut a pause is due. Ours. */
  pauseAfterDays: 112,
  /** A goal under this share of the present weight is planned in parts. Ours. */
  farthestGoal: 0.75,
  /** A plan looks so many days ahead at most. Ours. */
  planDays: 730,
  /** Length of the pause. Common practice. */
  pauseDays: 14,
  /** A set dropped for this long is offered to be taken out of the program file. Ours. */
  dropInForceDays: 21,
  /** No gain of a rep or load for this long lets a muscle have a set more. Ours. */
  plateauDays: 28,
  /** A lift with pain marked within so many days gets no set more. Ours. */
  painDays: 56,
  /** Of the hard sets planned, so much may be missing before that is told in place of more sets. Ours. */
  setsMissing: 1,
  /** Up to this share of the sessions planned, the first thing is to train. Ours. */
  hardlyTrained: 0.5,
  /** At most one set more, or one step out of a cut, in so many days. Ours. */
  moreEveryDays: 7,
  /** Days of training a week that come back after a cut end here. Ours. */
  mostDays: 4,
  /** Advice that the lifter turned down stays quiet for so long. Ours. */
  quietDays: 21,
} as const;
