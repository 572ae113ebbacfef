import type { Range } from '../program/program.ts';
import { CLUSTER, hardReps } from '../training/effort.ts';
import { repsToFailureAt } from '../training/strength.ts';
import type { LifterModel } from './lifter-model.ts';

/** How tired an exercise has left its muscles within the session. */
export interface Tiredness {
  /** Share of strength gone until much later. */
  readonly slow: number;
  /** Share of the reps to failure that is spent and comes back within a minute or two. */
  readonly spent: number;
}

export const RESTED: Tiredness = { slow: 0, spent: 0 };

export const afterRest = (
  { slow, spent }: Tiredness,
  model: LifterModel,
  seconds: number,
): Tiredness => ({
  slow: slow * Math.exp(-seconds / model.setCostSeconds),
  spent: spent * Math.exp(-seconds / model.shortRestSeconds),
});

/** Reps to failure of a lift today: rested, and with the reps spent before not yet back. Real numbers. */
export interface Able {
  readonly fresh: number;
  readonly left: number;
}

/** What `lifted` micrograms allow a lifter of `strength` (micrograms lifted once). */
export function ableReps(
  lifted: number,
  strength: number,
  { slow, spent }: Tiredness,
  model: LifterModel,
): Able {
  const curve = repsToFailureAt(lifted, strength * (1 - slow));
  const fresh = Math.max(0, 1 + (Math.min(MOST_REPS, curve) - 1) * model.endurance);
  return { fresh, left: fresh * (1 - spent) };
}

/** Nobody is asked for more, and no load at all allows no end of reps. */
const MOST_REPS = 60;

/** The tiredness after `reps` of what was possible. Reps near failure cost strength; a mini-set's are all near. */
export function afterReps(
  { slow, spent }: Tiredness,
  model: LifterModel,
  { fresh, left }: Able,
  reps: number,
): Tiredness {
  const reserve = Math.max(0, Math.round(left) - reps);
  const near = spent > 0.2 ? reps : hardReps(reps, reserve);
  const hard = Math.min(1, near / Math.max(1, hardReps(Math.round(fresh), 0)));
  return {
    slow: slow + model.setCost * hard,
    spent: fresh > 0 ? Math.min(1, 1 - Math.max(0, left - reps) / fresh) : 1,
  };
}

/** What a set asks of the lifter. */
export interface Asked {
  readonly aim: number;
  /** From the fewest to the most reps of the set. */
  readonly range: Range;
  /** Reps in reserve to stop at. */
  readonly reserve: Range;
}

export interface Lifted {
  readonly reps: number;
  /** As the lifter tells it. */
  readonly reserve: number;
}

/**
 * One set: the reps aimed at; more where more than the wanted reserve is felt to be left, up to the
 * most of the set; fewer where the reserve would be eaten into, unless that is what the low end
 * takes. `felt` is how many more reps than the true ones the lifter believes in.
 */
export function liftSet(left: number, felt: number, { aim, range, reserve }: Asked): Lifted {
  const believed = left + felt;
  const goesOnTo = Math.min(range[1], Math.floor(believed - reserve[1]));
  const stopsAt = Math.max(
    Math.floor(believed - reserve[0]),
    Math.min(range[0], Math.floor(believed)),
  );
  const wanted = Math.min(Math.max(aim, goesOnTo), stopsAt);
  return told(Math.max(0, Math.min(wanted, Math.floor(left))), believed);
}

/**
 * A mini-set: the first stops with one in reserve, at most at five reps, and spends the reserve
 * rather than end the cluster under three; the others stop at the first's reps.
 */
export function liftMini(left: number, felt: number, first: number | null): Lifted {
  const believed = left + felt;
  const { fewestMiniReps, mostMiniReps } = CLUSTER;
  const stopsAt = Math.max(
    Math.floor(believed - 1),
    Math.min(fewestMiniReps, Math.floor(believed)),
  );
  const wanted = first ?? Math.min(mostMiniReps, stopsAt);
  return told(Math.max(0, Math.min(wanted, Math.floor(left))), believed);
}

const told = (reps: number, believed: number): Lifted => ({
  reps,
  // Who got no rep up has none left.
  reserve: reps === 0 ? 0 : Math.max(0, Math.min(MOST_TOLD, Math.round(believed - reps))),
});

/** Above this nobody counts (Hackett 2017: poor far from failure). */
const MOST_TOLD = 6;

/**
 * Seconds that a hold can last: those of the body alone, fewer with a load on it in proportion to
 * the whole. Ours.
 */
export const ableSeconds = (seconds: number, load: number, bodyMass: number): number =>
  (seconds * bodyMass) / Math.max(bodyMass / 4, bodyMass + load);
