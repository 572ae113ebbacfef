import type { Gear } from '../../training/gear.ts';
import type { Joint, Muscle } from '../../training/lift.ts';
import type { Mass, Unit } from '../../training/mass.ts';
import type { Aim, Program } from '../program.ts';

/** What the lifter did lately with a lift. */
export interface Best {
  /** Key of the lift. */
  readonly lift: string;
  /** By the lift's loading: total on the bar, one dumbbell, the stack, or added to the body. */
  readonly load: Mass;
  readonly reps: number;
  /** Reps in reserve. */
  readonly reserve: number;
}

/** More reps than this say little of a load for few. Ours. */
export const MOST_REPS_OF_BEST = 10;

/** A program that is there already, to be changed rather than replaced. */
export interface Before {
  readonly text: string;
  readonly program: Program;
}

/** A lifter's answers, from which a program is worked out. */
export interface Wishes {
  /** What the program is to be called. */
  readonly name: string;
  /** Days a week. */
  readonly days: 2 | 3 | 4;
  /** Minutes a session at most. */
  readonly minutes: number;
  readonly gear: Gear;
  /** Keys of lifts that should be in it. */
  readonly like: readonly string[];
  /** Keys of lifts that must not be in it. */
  readonly without: readonly string[];
  /** Joints that hurt: lifts that load them hard stay out. */
  readonly hurts: readonly Joint[];
  /** Muscles to bring up. */
  readonly focus: readonly Muscle[];
  readonly bests: readonly Best[];
  /** Unit of the loads in the file. */
  readonly unit: Unit;
  readonly aim: Aim;
  /** For the loads of body weight lifts; null where it is not known. */
  readonly bodyMass: Mass | null;
  /** Null for a program from nothing. */
  readonly from: Before | null;
}
