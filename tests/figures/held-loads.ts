import { rackFor, stepAbove } from '../../src/progression/rack.ts';
import { ableLoad } from '../../src/rehearsal/able-load.ts';
import type { LifterModel } from '../../src/rehearsal/lifter-model.ts';
import { reallyLifted } from '../../src/rehearsal/play-session.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearse.ts';
import type { PrescribedExercise } from '../../src/progression/prescription.ts';
import type { Gear } from '../../src/training/gear.ts';
import type { Mass } from '../../src/training/mass.ts';

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
      const next = stepAbove(rackFor(exercise, gear, bodyMass), load);
      const [low, high] = exercise.range;
      const [hard, easy] = exercise.reserve;
      const each: Prescribed = {
        exercise,
        at,
        date: date.toString(),
        load,
        lifted,
        strength,
        step: next === null ? null : reallyLifted(exercise, next, bodyMass) / lifted,
        able: [ableLoad(strength, high, easy, model), ableLoad(strength, low, hard, model)],
        lighter: state.prescription.lighter,
      };
      tracks.set(exercise.track, [...(tracks.get(exercise.track) ?? []), each]);
    }
  });
  return tracks;
}

/** Is the load within 10 % of what the lifter can do for the range, or less than a step away from it? */
export function isWithin({ lifted, able, step }: Prescribed): boolean {
  const [lightest, heaviest] = able;
  const wide = Math.max(1.1, step ?? Number.POSITIVE_INFINITY);
  return lifted * wide >= lightest && lifted <= heaviest * 1.1;
}

/** A lifter's first sessions of a track, and the first after a layoff, look for the load. */
export const isSettled = (sessions: readonly Prescribed[], at: number): boolean =>
  at >= SETTLING_SESSIONS &&
  !sessions[at]?.lighter &&
  !['start', 'return'].includes(sessions[at]?.exercise.move ?? '');

const SETTLING_SESSIONS = 4;

/** The longest A, B, A, B … of a track, as the number of times it came back to A. */
export function longestOscillation(sessions: readonly Prescribed[]): number {
  const runs = sessions
    .map(({ load }) => load)
    .filter((load, at, all) => at === 0 || load !== all[at - 1]);
  let [longest, same] = [0, 0];
  for (let at = 2; at < runs.length; at += 1) {
    same = runs[at] === runs[at - 2] ? same + 1 : 0;
    longest = Math.max(longest, Math.ceil(same / 2));
  }
  return longest;
}

/**
 * The most that true strength has grown while one load was held, beyond what the step to the next
 * load asks for; below 0 where the load went up in time. Loads with no heavier one do not count.
 */
export function mostHeldBack(sessions: readonly Prescribed[]): number {
  let most = -1;
  let from = 0;
  sessions.forEach((each, at) => {
    if (each.load !== sessions[from]?.load) from = at;
    const start = sessions[from];
    if (!start || each.step === null) return;
    const grown = each.strength / each.lifted / (start.strength / start.lifted);
    most = Math.max(most, grown - each.step);
  });
  return most;
}

/**
 * Sessions after a layoff until the load is what it was, or what the lifter can now do for the
 * range's middle, less 5 % or a step; null where it never was. The first one back is 1.
 */
export function sessionsToRecover(
  sessions: readonly Prescribed[],
  back: number,
): number | null {
  const first = sessions.findIndex(({ at }) => at >= back);
  const before = sessions[first - 1];
  if (first < 1 || !before) return null;
  const found = sessions.slice(first).findIndex(({ load, lifted, able, step }) => {
    const goal = (able[0] + able[1]) / 2;
    const near = Math.max(1.05, step ?? Number.POSITIVE_INFINITY);
    return load >= before.load || lifted * near >= goal;
  });
  return found < 0 ? null : found + 1;
}

