import { elapsedMs, type Reading } from '../training/reading.ts';
import { worksOf } from './done-sets.ts';
import { isCluster } from './next-set.ts';
import { setsAsked, setsCountedIn } from './session-done.ts';
import type { LiftWork, SessionState } from './state.ts';

/** What a session came to so far. */
export interface SessionSummary {
  /** From the opening to now, or to the last set once it is closed; pauses left out. */
  readonly minutes: number;
  readonly setsDone: number;
  readonly setsPlanned: number;
  /** Seconds; null where no cluster was done. */
  readonly clusters: ClusterTime | null;
}

export interface ClusterTime {
  /** From the start of the lead set to the end of the last mini-set. */
  readonly spent: number;
  /** The same reps in sets as long as the lead set, with full rests. */
  readonly asStraight: number;
}

/** Seconds a rep takes, and a full rest (Marshall 2012, J Sci Med Sport 15(2):153–158). */
const SECONDS_PER_REP = 3;
const FULL_REST_SECONDS = 180;

export function summaryOf(state: SessionState, now: Reading): SessionSummary {
  return {
    minutes: spentMs(state, now) / 60_000,
    setsDone: setsCountedIn(state),
    setsPlanned: setsAsked(state.prescription.exercises),
    clusters: clusterTime(state),
  };
}

function spentMs({ openedAt, lastDown, stage, pausedSince, pausedMs }: SessionState, now: Reading) {
  if (stage.kind !== 'closed') {
    return Math.max(0, elapsedMs(openedAt, pausedSince ?? now) - pausedMs);
  }
  return lastDown
    ? Math.max(0, elapsedMs(openedAt, lastDown.at) - (pausedMs - lastDown.pausedMs))
    : 0;
}

function clusterTime({ exercises }: SessionState): ClusterTime | null {
  const clusters = exercises
    .flatMap(worksOf)
    .filter((work) => isCluster(work) && work.prescribed.counts === 'reps' && work.done.length > 1);
  if (clusters.length === 0) return null;
  const total = (seconds: (work: LiftWork) => number) =>
    Math.round(clusters.reduce((sum, work) => sum + seconds(work), 0));
  return { spent: total(spentOn), asStraight: total(asStraight) };
}

function spentOn({ done }: LiftWork): number {
  const [lead] = done;
  const last = done.at(-1);
  if (!lead || !last) return 0;
  return elapsedMs(lead.startedAt ?? lead.at, last.at) / 1000;
}

function asStraight({ done }: LiftWork): number {
  const reps = done.reduce((sum, { count }) => sum + count, 0);
  const sets = Math.ceil(reps / Math.max(1, done[0]?.count ?? 1));
  return reps * SECONDS_PER_REP + (sets - 1) * FULL_REST_SECONDS;
}
