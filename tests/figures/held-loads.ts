import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import { rackFor, stepAbove } from '../../src/progression/rack.ts';
import type { LifterModel } from '../../src/rehearsal/lifter-model.ts';
import { reallyLifted } from '../../src/rehearsal/play-session.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearse.ts';
import type { Gear } from '../../src/training/gear.ts';
import { nextBelow } from '../../src/training/loads.ts';
import type { Mass } from '../../src/training/mass.ts';
import { ableLoad } from '../rehearsal/made-model.ts';

/** One session of a track: what was prescribed, and what the lifter could truly do. */
export interface Prescribed {
  readonly exercise: PrescribedExercise;
  /** Position among the sessions of the rehearsal. */
  readonly at: number;
  readonly date: string;
  readonly load: Mass;
  /** Really lifted, in micrograms. */
  readonly lifted: number;
  readonly strength: number;
  /** Really lifted with the next load up, ÷ with this; null at the end of the rack. */
  readonly step: number | null;
  /** Really lifted with this, ÷ with the next load down; null at the end of the rack. */
  readonly stepDown: number | null;
  /** Share of strength that is there for the last set, after those before it. */
  readonly lastSet: number;
  /** True loads for the most reps with the most in reserve, and for the fewest with the fewest. */
  readonly able: readonly [lightest: number, heaviest: number];
  readonly lighter: boolean;
}

/** Every track that counts reps, its sessions in order. */
export function tracksOf(
  { sessions }: Rehearsal,
  gear: Gear,
  model: LifterModel,
): ReadonlyMap<string, readonly Prescribed[]> {
  const tracks = new Map<string, Prescribed[]>();
  sessions.forEach(({ state, able, bodyMass, date }, at) => {
    for (const exercise of state.prescription.exercises) {
      const done = state.exercises.find(({ prescribed }) => prescribed.track === exercise.track);
      const load = exercise.load ?? done?.done[0]?.load;
      if (exercise.counts !== 'reps' || load === undefined) continue;
      const strength = able.get(exercise.lift) ?? 0;
      const lifted = reallyLifted(exercise, load, bodyMass);
      const rack = rackFor(exercise, gear, bodyMass);
      const [above, below] = [stepAbove(rack, load), nextBelow(rack.loads, load)];
      const [low, high] = exercise.range;
      const [hard, easy] = exercise.reserve;
      const each: Prescribed = {
        exercise,
        at,
        date: date.toString(),
        load,
        lifted,
        strength,
        step: above === null ? null : reallyLifted(exercise, above, bodyMass) / lifted,
        stepDown: below === null ? null : lifted / reallyLifted(exercise, below, bodyMass),
        lastSet: (1 - model.setCost) ** (exercise.sets.length - 1),
        able: [ableLoad(strength, high, easy, model), ableLoad(strength, low, hard, model)],
        lighter: state.prescription.lighter,
      };
      tracks.set(exercise.track, [...(tracks.get(exercise.track) ?? []), each]);
    }
  });
  return tracks;
}

/** Is the load within 10 % of what the lifter can do for the range, or less than a step away from it? */
export function isWithin({ lifted, able, step, stepDown }: Prescribed): boolean {
  const [lightest, heaviest] = able;
  const end = Number.POSITIVE_INFINITY;
  return (
    lifted * Math.max(WITHIN, step ?? end) >= lightest &&
    lifted <= heaviest * Math.max(WITHIN, stepDown ?? end)
  );
}

const WITHIN = 1.1;

/** A lifter's first sessions of a track, and the first after a layoff, look for the load. */
export const isSettled = (sessions: readonly Prescribed[], at: number): boolean =>
  at >= SETTLING_SESSIONS &&
  !sessions[at]?.lighter &&
  !['start', 'return'].includes(sessions[at]?.exercise.move ?? '');

const SETTLING_SESSIONS = 4;

/**
 * The longest A, B, A, B … of a track, as the number of times it came back to A. The first session
 * of all looks for the load and does not count; a return from a
 * layoff is a way back, so the count begins anew there.
 */
export function longestOscillation(sessions: readonly Prescribed[]): number {
  let [longest, same] = [0, 0];
  let runs: Mass[] = [];
  for (const { load, exercise } of sessions) {
    if (exercise.move === 'start') continue;
    if (exercise.move === 'return') [runs, same] = [[], 0];
    if (load === runs.at(-1)) continue;
    same = load === runs.at(-2) ? same + 1 : 0;
    runs.push(load);
    longest = Math.max(longest, Math.ceil(same / 2));
  }
  return longest;
}

/**
 * The most sessions in a row at a load that the lifter has truly outgrown: the most reps of the range, with
 * the most in reserve, could be done at the next load in every set, the tired last one included. The
 * end of the rack does not count.
 */
export function longestHeldBack(sessions: readonly Prescribed[]): number {
  let [longest, held] = [0, 0];
  sessions.forEach(({ load, lifted, step, able, lastSet, exercise }, at) => {
    const isSame = load === sessions[at - 1]?.load && exercise.move !== 'return';
    const isOutgrown = step !== null && lifted * step <= able[0] * lastSet;
    held = !isSame || !isOutgrown ? 0 : held + 1;
    longest = Math.max(longest, held);
  });
  return longest;
}

/**
 * Sessions after a layoff until the load is one that the lifter can truly do for the range, or is
 * what it was, less than a step away; null where it never was. The first one back is 1.
 */
export function sessionsToRecover(sessions: readonly Prescribed[], back: number): number | null {
  const first = sessions.findIndex(({ at }) => at >= back);
  const before = sessions[first - 1];
  if (first < 1 || !before) return null;
  const found = sessions.slice(first).findIndex(({ load, lifted, able, step }) => {
    const next = lifted * (step ?? Number.POSITIVE_INFINITY);
    return lifted * SAME_LOAD >= able[0] || next >= lifted + before.load - load;
  });
  return found < 0 ? null : found + 1;
}

/** Loads nearer than 1 % to each other are no step apart: see the smallest step of progression. */
const SAME_LOAD = 1.01;
