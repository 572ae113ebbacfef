import { elapsedMs, type Reading } from '../training/reading.ts';
import type { SessionState } from './state.ts';

export const pauseAt = (state: SessionState, at: Reading): SessionState =>
  state.pausedSince ? state : { ...state, pausedSince: at };

/** Ends a pause where one runs: what runs beside it, a rest or a set, gets longer by it. */
export function resumeAt(state: SessionState, at: Reading): SessionState {
  const { pausedSince, stage, lastDown } = state;
  if (!pausedSince) return state;
  const paused = elapsedMs(pausedSince, at);
  return {
    ...state,
    pausedSince: null,
    pausedMs: state.pausedMs + paused,
    stage: stage.kind === 'lifting' ? { ...stage, pausedMs: stage.pausedMs + paused } : stage,
    lastDown: lastDown && { ...lastDown, pausedMs: lastDown.pausedMs + paused },
  };
}
