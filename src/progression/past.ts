import type { Temporal } from 'temporal-polyfill';
import type { Aim } from '../program/program.ts';
import type { Gear } from '../training/gear.ts';
import type { Mass, Unit } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { PrescribedExercise } from './prescription.ts';

/** How a set's numbers came to be: `as-planned` has not been seen by the lifter yet and never earns `up`. */
export type Entered = 'as-planned' | 'confirmed' | 'typed';

export interface SetResult {
  /** What a correction names. */
  readonly id: string;
  /** The setting of a bodyweight lift: added − assistance. */
  readonly load: Mass;
  /** Reps, or seconds where the lift counts seconds. */
  readonly count: number;
  /** Reps in reserve; null where the lifter gave none. */
  readonly reserve: number | null;
  /** The rep after the last was tried and did not come up: the zero in reserve is known. */
  readonly failed?: boolean;
  readonly entered: Entered;
}

/** What a past result keeps of its plan: of what was said of it the keys of the rules. */
export interface DoneExercise
  extends Omit<PrescribedExercise, 'why' | 'last' | 'warmUp' | 'askPain'> {
  readonly why: readonly Pick<Reason, 'rule'>[];
}

/** One exercise of one session, as it was prescribed and as it was done. */
export interface Result {
  readonly session: string;
  /** Epoch milliseconds at the session's start: the order of results. */
  readonly start: number;
  /** The session's local date at its start. */
  readonly date: Temporal.PlainDate;
  readonly program: string;
  readonly day: string;
  readonly exercise: DoneExercise;
  /** Work sets in order; of a cluster the lead set, then its mini-sets. Never warm-ups. */
  readonly sets: readonly SetResult[];
  /** Every prescribed set was done, or the cluster reached its own end. */
  readonly finished: boolean;
  readonly pain: boolean;
  /** Part of a lighter week. */
  readonly lighter: boolean;
}

export interface SessionDone {
  readonly session: string;
  readonly start: number;
  readonly end: number;
  readonly date: Temporal.PlainDate;
  readonly program: string;
  readonly day: string;
  /** The program's aim on that day; absent where it was not kept. */
  readonly aim?: Aim;
  /** Sessions a week that the program asked for on that day; absent where it was not kept. */
  readonly daysPerWeek?: number;
  readonly setsPlanned: number;
  /** Work sets; a cluster counts as one when its lead is done. */
  readonly setsDone: number;
  readonly how: 'closed' | 'abandoned';
  /** In which its loads were told. */
  readonly unit: Unit;
  /** Of the session and of its exercises; absent where there are none. */
  readonly notes?: readonly string[];
  /** Holds something that this version does not understand: it moves no load. */
  readonly foreign: boolean;
}

/** Something the lifter said yes or no to. */
export interface Decision {
  readonly rule: string;
  readonly answer: 'yes' | 'no' | 'lighter' | 'other-lift' | 'leave-out' | 'go-on';
  /** Lift or track it is about; null for the whole program. */
  readonly subject: string | null;
  readonly at: number;
  readonly date: Temporal.PlainDate;
}

/** Everything that progression knows of the past. Journal fills it; a rehearsal fills it without one. */
export interface Past {
  /** In order of session start. */
  readonly results: readonly Result[];
  readonly sessions: readonly SessionDone[];
  readonly decisions: readonly Decision[];
  /** Body weight trend on a day, or null before the first weigh-in. Never uses later readings. */
  readonly bodyMassOn: (date: Temporal.PlainDate) => Mass | null;
}

/** What a prescription is made with, besides program and past. */
export interface Circumstances {
  readonly today: Temporal.PlainDate;
  readonly gear: Gear;
}
