import type { Rest } from '../program/program.ts';
import type { SetPlace } from './events.ts';
import { nextSet } from './next-set.ts';
import type { LastDown, SessionState, Stage } from './state.ts';

/** Rest after a warm-up set, in seconds (60 s: common practice; the late end is ours). */
export const WARM_UP_REST: Rest = { from: 60, to: 120 };

/** The state with its stage worked out again, after anything but its stage has changed. */
export function settle(state: SessionState): SessionState {
  return { ...state, stage: stageOf(state) };
}

function stageOf(state: SessionState): Stage {
  const { stage, lastDown } = state;
  if (stage.kind === 'closed' || stage.kind === 'lifting') return stage;
  const next = nextSet(state);
  if (!next) return { kind: 'all-done' };
  if (!lastDown) return { kind: 'ready', next };
  const { at: since, pausedMs, changedBy } = lastDown;
  const rest = changed(restBefore(state, lastDown, next), changedBy);
  return { kind: 'resting', next, running: { since, rest, pausedMs } };
}

function restBefore(
  { exercises, prescription }: SessionState,
  last: LastDown,
  next: SetPlace,
): Rest {
  const exercise = exercises[next.exercise];
  const same = last.place.exercise === next.exercise && last.track === exercise?.prescribed.track;
  if (!exercise || !same) return prescription.restBetween;
  return last.place.role === 'warm-up' ? WARM_UP_REST : exercise.prescribed.rest;
}

const changed = ({ from, to }: Rest, by: number): Rest => ({
  from: Math.max(0, from + by),
  to: Math.max(0, to + by),
});
