import { clockSetByMs, elapsedMs, type Reading } from '../training/reading.ts';
import { aimOf } from './aim.ts';
import { clusterProgress } from './cluster-progress.ts';
import type { SetPlace } from './events.ts';
import type { Closing, RunningRest, SessionState } from './state.ts';

/** What the time adds to the stage. Only how far the clock was set can be negative. */
export type StageNow = {
  readonly paused: boolean;
  /** How far the clock was set since the last event, later (positive) or earlier; 0 within 2 s. */
  readonly clockSetMs: number;
} & (
  | { readonly kind: 'ready'; readonly next: SetPlace }
  | ({ readonly kind: 'resting' } & RestNow)
  | ({ readonly kind: 'lifting' } & LiftNow)
  | { readonly kind: 'all-done' }
  | { readonly kind: 'closed'; readonly how: Closing }
);

export interface RestNow {
  readonly next: SetPlace;
  readonly running: RunningRest;
  readonly restedMs: number;
  /** To the early end and to the late end; 0 once passed. */
  readonly toEarlyMs: number;
  readonly toLateMs: number;
  readonly passed: 'neither' | 'early' | 'both';
  /** The next mini-set is the last that the cluster may have. */
  readonly lastOne: boolean;
}

export interface LiftNow {
  readonly set: SetPlace;
  readonly since: Reading;
  readonly liftedMs: number;
  /** Started by itself at the early end of the rest: no event tells of it, and putting it down needs none. */
  readonly byItself: boolean;
  /** To the late end of the rest, where the set started by itself. */
  readonly toLateMs: number;
  /** To the seconds aimed at, of a timed hold; null for reps. Of both sides, one after the other, where each is held. */
  readonly holdLeftMs: number | null;
  /** To the change of sides, where each is held by itself; else null. */
  readonly sideLeftMs: number | null;
  readonly lastOne: boolean;
}

/** A mini-set started by itself that nobody put down for so long is not being lifted. Ours. */
const BY_ITSELF_AT_MOST_MS = 120_000;

/** Clocks that differ by less are not worth a word. */
const CLOCK_TOLERANCE_MS = 2_000;

/** Where the lifter is at `now`: the stage, its times, and the mini-set that starts by itself. */
export function stageNow(state: SessionState, now: Reading): StageNow {
  const { stage, pausedSince } = state;
  const set = clockSetByMs(state.lastAt, now);
  const common = {
    paused: pausedSince !== null,
    clockSetMs: Math.abs(set) > CLOCK_TOLERANCE_MS ? set : 0,
  };
  // While paused every clock stands where it stood.
  const at = pausedSince ?? now;
  switch (stage.kind) {
    case 'resting':
      return { ...common, ...restingNow(state, stage.next, stage.running, at) };
    case 'lifting': {
      const liftedMs = Math.max(0, elapsedMs(stage.since, at) - stage.pausedMs);
      return { ...common, ...lifting(state, stage.set, { since: stage.since, liftedMs }) };
    }
    default:
      return { ...common, ...stage };
  }
}

function restingNow(
  state: SessionState,
  next: SetPlace,
  running: RunningRest,
  at: Reading,
): ({ readonly kind: 'resting' } & RestNow) | ({ readonly kind: 'lifting' } & LiftNow) {
  const restedMs = Math.max(0, elapsedMs(running.since, at) - running.pausedMs);
  const early = running.rest.from * 1000;
  const toLateMs = Math.max(0, running.rest.to * 1000 - restedMs);
  const over = restedMs - early;
  if (next.role === 'mini' && over >= 0 && over <= BY_ITSELF_AT_MOST_MS) {
    const since = laterBy(running.since, early + running.pausedMs);
    return { ...lifting(state, next, { since, liftedMs: over }), byItself: true, toLateMs };
  }
  return {
    kind: 'resting',
    next,
    running,
    restedMs,
    toEarlyMs: Math.max(0, -over),
    toLateMs,
    passed: over < 0 ? 'neither' : toLateMs > 0 ? 'early' : 'both',
    lastOne: isLastOne(state, next),
  };
}

function lifting(
  state: SessionState,
  set: SetPlace,
  time: Pick<LiftNow, 'since' | 'liftedMs'>,
): { readonly kind: 'lifting' } & LiftNow {
  const { counts, perSide = false } = state.exercises[set.exercise]?.prescribed ?? {};
  const isHold = counts === 'seconds' && set.role !== 'warm-up';
  const aimed = (aimOf(state, set)?.count ?? 0) * 1000;
  const left = (ms: number) => Math.max(0, ms - time.liftedMs);
  return {
    kind: 'lifting',
    set,
    ...time,
    byItself: false,
    toLateMs: 0,
    holdLeftMs: isHold ? left(perSide ? 2 * aimed : aimed) : null,
    sideLeftMs: isHold && perSide ? left(aimed) : null,
    lastOne: isLastOne(state, set),
  };
}

function isLastOne(state: SessionState, place: SetPlace): boolean {
  const exercise = state.exercises[place.exercise];
  return place.role === 'mini' && exercise !== undefined && clusterProgress(exercise).lastNext;
}

/** The reading that the clock gives `ms` after another, as long as nobody sets it. */
export const laterBy = ({ wall, up, boot }: Reading, ms: number): Reading => ({
  wall: wall + ms,
  up: up === null ? null : up + ms,
  boot,
});

/** No rep is lifted, and no bar put down and taken up again, in less (ours): what comes sooner is a bounce of the key. */
export const LEAST_MS = 1_500;

/** Milliseconds from `at` until so much time has passed since an instant that a key is meant; 0 once it has. */
export function untilMeant(since: Reading, at: Reading): number {
  // A clock set back tells nothing, and must not keep the lifter from going on.
  return at.wall < since.wall ? 0 : Math.max(0, LEAST_MS - elapsedMs(since, at));
}
