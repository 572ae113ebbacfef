import { elapsedMs } from '../training/reading.ts';
import { type Phase, phaseOf } from './phase.ts';
import type { Model } from './ui-state.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/**
 * Milliseconds until something on the screen changes by itself, aligned to the second that is
 * shown; null when nothing will.
 */
export function nextWake({ session, now }: Pick<Model, 'session' | 'now'>): number | null {
  if (!session || session.pausedSince || session.stage.kind === 'closed') return null;
  const phase = phaseOf(session, now);
  const minute = MINUTE - (elapsedMs(session.openedAt, now) % MINUTE) - MINUTE / 2;
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
