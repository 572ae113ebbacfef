/**
 * The numbers that a program is held against. Those without a source are ours or common practice;
 * the rules say which.
 */
export const CHECK_LIMITS = {
  /** Hard sets a muscle a week, by what the program is for. */
  weeklySets: { cut: [6, 10], maintain: [4, 10], build: [10, 20] },
  /** Fewer are advised on: what keeps (Iversen 2021), and in building what is well under the range (ours). */
  fewSets: { cut: 4, maintain: 4, build: 8 },
  /** More than this many times the most is an error. Ours. */
  farTooMany: 1.5,
  /** Days a week on which a muscle is trained. */
  muscleDays: [2, 3],
  /** Fewer days a week are advised on: two full bodies in turn give 1.5. Ours. */
  fewDays: 1.5,
  mostDays: 4,
  /** With so many days a week one is left for rest. */
  daysWithoutRest: 6,
  /** Days a week of failure in lifts that are hard on the back. Ours. */
  failureDays: 2,
  /** Compounds of one pattern on a day. Ours. */
  liftsOfOneMovement: 2,
  compoundReps: [4, 10],
  /** Of a body weight lift, whose reps go up where its load cannot. Ours. */
  bodyReps: [4, 25],
  compoundRest: [180, 300],
  /** From so many reps on a set is not heavy, and less rest does. Ours. */
  lightReps: 10,
  lightRest: [90, 300],
  clusterLead: [12, 15],
  clusterRest: [10, 15],
  clusterSets: 5,
  /** Clusters of at most so many sets may come on any number of days. Ours. */
  smallCluster: 3,
  clusterDays: 2,
  /** Minutes that a session may take, by what the program is for. Ours. */
  longSession: { cut: 75, maintain: 90, build: 90 },
  /** The next load is the first at least this share above (ours); over the second, a step is large (ACSM 2009). */
  smallestStep: 0.01,
  largestStep: 0.1,
  /** Reps that a range is stretched to at most before a large step. Ours. */
  mostReps: { compound: 20, isolation: 30 },
} as const;
