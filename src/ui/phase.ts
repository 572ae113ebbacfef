import { aimOf } from '../session/aim.ts';
import type { SetPlace } from '../session/events.ts';
import { stageNow, untilMeant } from '../session/stage-now.ts';
import type { RunningRest, SessionState } from '../session/state.ts';
import { spentMs } from '../session/summary.ts';
import type { Reading } from '../training/reading.ts';
import type { Model } from './model.ts';
import { countdownText } from './words.ts';

/** Where the session stands at an instant, as the screens tell it apart. */
export type Phase = PhaseOf & {
  /** Milliseconds until the main key does something: sooner it can only have bounced. */
  readonly waitMs: number;
};

type PhaseOf =
  | { readonly kind: 'ready'; readonly next: SetPlace }
  | {
      readonly kind: 'lifting';
      readonly set: SetPlace;
      readonly elapsedMs: number;
      /** To the seconds aimed at, of a timed hold; null for reps. */
      readonly holdLeftMs: number | null;
      readonly sideLeftMs: number | null;
      /** Started by itself at the early end of its rest. */
      readonly byItself: boolean;
      readonly lastOne: boolean;
    }
  | {
      readonly kind: 'resting';
      readonly next: SetPlace;
      /** The end that is counted down to. */
      readonly end: 'early' | 'late';
      readonly leftMs: number;
      readonly toLateMs: number;
      readonly elapsedMs: number;
      readonly running: RunningRest;
      readonly lastOne: boolean;
    }
  /** The late end has passed. */
  | {
      readonly kind: 'over';
      readonly next: SetPlace;
      readonly overMs: number;
      readonly running: RunningRest;
    }
  | { readonly kind: 'all-done' }
  | { readonly kind: 'closed' };

export function phaseOf(session: SessionState, now: Reading): Phase {
  return { ...phaseAt(session, now), waitMs: waitMs(session, now) };
}

function waitMs(session: SessionState, now: Reading): number {
  const stage = stageNow(session, now);
  if (stage.kind === 'closed') return 0;
  const since = stage.kind === 'lifting' ? stage.since : session.lastDown?.at;
  return since ? untilMeant(since, now) : 0;
}

function phaseAt(session: SessionState, now: Reading): PhaseOf {
  const stage = stageNow(session, now);
  switch (stage.kind) {
    case 'ready':
      return { kind: 'ready', next: stage.next };
    case 'lifting': {
      const { set, liftedMs, holdLeftMs, sideLeftMs, byItself, lastOne } = stage;
      return {
        kind: 'lifting',
        set,
        elapsedMs: liftedMs,
        holdLeftMs,
        sideLeftMs,
        byItself,
        lastOne,
      };
    }
    case 'resting': {
      const { next, running, restedMs, toEarlyMs, toLateMs, passed, lastOne } = stage;
      if (passed === 'both') {
        return { kind: 'over', next, running, overMs: restedMs - running.rest.to * 1000 };
      }
      const early = passed === 'neither';
      const leftMs = early ? toEarlyMs : toLateMs;
      const times = { leftMs, toLateMs, elapsedMs: restedMs };
      return { kind: 'resting', next, end: early ? 'early' : 'late', ...times, running, lastOne };
    }
    default:
      return { kind: stage.kind };
  }
}

/** The exercise whose load is still to be chosen before the next set; null where it is known. */
export function loadWanted(session: SessionState, phase: Phase): number | null {
  const place = phase.kind === 'lifting' ? null : placeOf(phase);
  return place && aimOf(session, place)?.load === null ? place.exercise : null;
}

/** The set that the lifter does or will do next. */
export function placeOf(phase: Phase): SetPlace | null {
  if (phase.kind === 'lifting') return phase.set;
  return phase.kind === 'all-done' || phase.kind === 'closed' ? null : phase.next;
}

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/**
 * Milliseconds until something on the screen changes by itself, aligned to the second that is
 * shown; null when nothing will.
 */
export function nextWake({ session, now }: Pick<Model, 'session' | 'now'>): number | null {
  if (!session || session.pausedSince || session.stage.kind === 'closed') return null;
  const phase = phaseOf(session, now);
  const minute = MINUTE - (spentMs(session, now) % MINUTE) - MINUTE / 2;
  const toMinute = minute > 0 ? minute : minute + MINUTE;
  return Math.min(toSecond(phase), toMinute, phase.waitMs || Number.POSITIVE_INFINITY);
}

function toSecond(phase: Phase): number {
  if (phase.kind === 'resting') return phase.leftMs % SECOND || SECOND;
  if (phase.kind === 'over') return SECOND - (phase.overMs % SECOND);
  // Reps count themselves; only a hold shows its seconds.
  const ticking = phase.kind === 'lifting' && phase.holdLeftMs !== null;
  return ticking ? SECOND - (phase.elapsedMs % SECOND) : Number.POSITIVE_INFINITY;
}

/** Title of the window: the time left, so that a glance at the tab is enough. */
export function titleOf({ session, now }: Pick<Model, 'session' | 'now'>): string {
  if (!session || session.stage.kind === 'closed') return 'holdfast';
  if (session.pausedSince) return 'paused';
  const phase = phaseOf(session, now);
  if (phase.kind === 'resting') return `${countdownText(coarse(phase.leftMs))} rest`;
  if (phase.kind === 'over' || phase.kind === 'lifting') return 'lift';
  return phase.kind === 'all-done' ? 'done' : 'ready';
}

/** In steps of fifteen seconds until the last fifteen: a tab that flickers is noise, and costs bytes. */
const coarse = (ms: number): number => (ms > 15_000 ? Math.ceil(ms / 15_000) * 15_000 : ms);

/** Share of the rest that is over, 0 to 1; null while none runs. */
export function progressOf({ session, now }: Pick<Model, 'session' | 'now'>): number | null {
  const phase = session && !session.pausedSince ? phaseOf(session, now) : null;
  if (phase?.kind !== 'resting') return null;
  const whole = phase.running.rest.to * 1000;
  return whole > 0 ? Math.min(1, phase.elapsedMs / whole) : null;
}
