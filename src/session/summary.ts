import { elapsedMs, type Reading } from '../training/reading.ts';
import { exerciseSeconds } from '../training/set-clock.ts';
import { isCluster, worksOf } from './next-set.ts';
import { setsAskedIn, setsCountedIn } from './results.ts';
import type { LiftWork, SessionState } from './state.ts';

/** What a session came to so far. */
export interface SessionSummary {
  /** From the opening to now, or to the last set once no set is left; pauses left out. */
  readonly minutes: number;
  readonly setsDone: number;
  readonly setsAsked: number;
  /** Seconds; null where no cluster was done. */
  readonly clusters: ClusterTime | null;
}

export interface ClusterTime {
  /** From the start of the lead set to the end of the last mini-set. */
  readonly spent: number;
  /** The same reps in sets as long as the lead set, with full rests. */
  readonly asStraight: number;
}

/** A full rest, in seconds (Marshall 2012, J Sci Med Sport 15(2):153–158). */
const FULL_REST = { from: 180, to: 180 };

export function summaryOf(state: SessionState, now: Reading): SessionSummary {
  return {
    minutes: spentMs(state, now) / 60_000,
    setsDone: setsCountedIn(state),
    setsAsked: setsAskedIn(state),
    clusters: clusterTime(state),
  };
}

/** Milliseconds that the session took so far, as its summary counts them. */
export function spentMs(
  { openedAt, lastDown, stage, pausedSince, pausedMs }: SessionState,
  now: Reading,
): number {
  if (stage.kind !== 'closed' && stage.kind !== 'all-done') {
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

function asStraight({ done, prescribed: { counts, perSide } }: LiftWork): number {
  const lead = Math.max(1, done[0]?.count ?? 1);
  const sets: number[] = [];
  for (let left = done.reduce((sum, { count }) => sum + count, 0); left > 0; left -= lead) {
    sets.push(Math.min(left, lead));
  }
  return exerciseSeconds({ counts, sets, rest: FULL_REST, perSide, warmUps: 0 });
}
