import type { Range } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import type { SetPlace } from './events.ts';
import type { LiftWork, SessionState } from './state.ts';

/** What a set asks for. */
export interface SetAim {
  /** Null: not known yet, the lifter is asked. */
  readonly load: Mass | null;
  readonly count: number;
  /** Null for warm-ups and mini-sets, which have one number. */
  readonly range: Range | null;
  /** Reps in reserve to stop at; null for warm-ups, timed holds, and mini-sets that stop at the first one's reps. */
  readonly reserve: Range | null;
}

/** The first mini-set stops with so many reps in reserve; ours. */
const FIRST_MINI_RESERVE: Range = [1, 1];

/** What the set at a place asks for; null where the session has no such exercise or warm-up. */
export function aimOf(state: Pick<SessionState, 'exercises'>, place: SetPlace): SetAim | null {
  const exercise = state.exercises[place.exercise];
  if (!exercise) return null;
  if (place.role === 'warm-up') return warmUpAim(exercise, place.index);
  return place.role === 'mini' ? miniAim(exercise) : workAim(exercise, place.index);
}

/**
 * The load on the bar: that of the work set put down last, or that of the prescription where it
 * was changed since.
 */
export function presentLoad({ prescribed, done, doneBeforeChange }: LiftWork): Mass | null {
  const last = done.at(-1)?.load ?? null;
  return done.length > doneBeforeChange ? last : (prescribed.load ?? last);
}

function warmUpAim({ prescribed }: LiftWork, index: number): SetAim | null {
  const warmUp = prescribed.warmUp[index];
  return warmUp ? { load: warmUp.load, count: warmUp.reps, range: null, reserve: null } : null;
}

function miniAim(work: LiftWork): SetAim {
  const first = work.done[1];
  const load = presentLoad(work);
  if (first) return { load, count: first.count, range: null, reserve: null };
  const reserve = work.prescribed.counts === 'seconds' ? null : FIRST_MINI_RESERVE;
  return { load, count: work.prescribed.minis?.aim ?? 0, range: null, reserve };
}

/** An added set asks for what the last planned one asks for. */
function workAim(work: LiftWork, index: number): SetAim {
  const { prescribed } = work;
  const set = prescribed.sets[index] ?? prescribed.sets.at(-1);
  return {
    load: presentLoad(work),
    count: set?.aim ?? prescribed.range[0],
    range: set?.range ?? prescribed.range,
    reserve: prescribed.counts === 'seconds' ? null : prescribed.reserve,
  };
}
