import type { Range } from '../program/program.ts';
import { countedReserve } from '../training/effort.ts';
import type { Mass } from '../training/mass.ts';
import { loadForReps, oneRepMax, repsToFailureAt } from '../training/strength.ts';
import { type Bout, reserveOfSet } from './bout.ts';
import type { Rack } from './rack.ts';

/** What one set tells about strength: its load, its reps and how many more could have been done. */
export interface SetEvidence {
  readonly load: Mass;
  readonly reps: number;
  readonly reserve: number;
}

/** What the first set of a session tells. */
export function firstSetEvidence(bout: Bout): SetEvidence {
  const [first] = bout.sets;
  return {
    load: bout.load,
    reps: first?.count ?? 0,
    reserve: first ? reserveOfSet(first, bout) : 0,
  };
}

/** What the sets after the first tell; those of a cluster are not judged. */
export const laterSetsEvidence = (bout: Bout): SetEvidence[] =>
  bout.sets.slice(1).map((set) => ({
    load: bout.load,
    reps: set.count,
    reserve: reserveOfSet(set, bout),
  }));

export const middle = ([low, high]: Range): number => (low + high) / 2;

/** Reps left at `load` when stopping at `reserve`, as a real number; null where no estimate can be made. */
export function repsAt(
  rack: Rack,
  load: Mass,
  reserve: number,
  evidence: SetEvidence,
): number | null {
  const lifted = rack.system(load);
  const max = maxOf(rack, evidence);
  return lifted === null || max === null ? null : repsToFailureAt(lifted, max) - reserve;
}

/** The load, rounded down to a microgram, with which `reps` are done at `reserve`; null without an estimate. */
export function loadFor(
  rack: Rack,
  reps: number,
  reserve: number,
  evidence: SetEvidence,
): Mass | null {
  const max = maxOf(rack, evidence);
  return max === null ? null : rack.setting(loadForReps(max, reps, reserve));
}

/** The set that tells of the most strength; null where none tells. */
export function bestOf(rack: Rack, sets: readonly SetEvidence[]): SetEvidence | null {
  const known = sets.filter((set) => maxOf(rack, set) !== null);
  const [best] = known.sort((one, other) => (maxOf(rack, other) ?? 0) - (maxOf(rack, one) ?? 0));
  return best ?? null;
}

function maxOf(rack: Rack, { load, reps, reserve }: SetEvidence): number | null {
  const lifted = rack.system(load);
  if (lifted === null || lifted <= 0 || reps < 1) return null;
  return oneRepMax(lifted, reps + countedReserve(reserve));
}
