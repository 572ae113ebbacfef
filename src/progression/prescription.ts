import type { Aim, Range, Rest } from '../program/program.ts';
import type { Basis, Joint, Lift } from '../training/lift.ts';
import type { Mass, Unit } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';

/** What progression does with an exercise. */
export type Move = 'start' | 'up' | 'hold' | 'ease' | 'return';

export interface PrescribedSet {
  /** Reps (or seconds) aimed at. */
  readonly aim: number;
  readonly range: Range;
}

export interface WarmUpSet {
  readonly load: Mass;
  readonly reps: number;
}

/** The last time this track was trained, for the lifter's eye. */
export interface LastTime {
  /** `2026-11-20`. */
  readonly date: string;
  /** Of the first set. */
  readonly load: Mass;
  /** Of each set, where they differ. */
  readonly loads?: readonly Mass[];
  readonly counts: readonly number[];
  readonly reserves: readonly (number | null)[];
}

/** Where an exercise stands in its program: what it is looked up by, also once another lift took its place. */
export interface InProgram {
  readonly day: string;
  /** Among the exercises of the day, from 0. */
  readonly position: number;
  /** Key of the lift that the program wrote there. */
  readonly lift: string;
}

/** The mini-sets of a cluster. */
export interface PrescribedMinis {
  /** The lead set and its mini-sets together. */
  readonly mostSets: number;
  /** Reps aimed at in each mini-set until the first is done; then its reps are the aim. */
  readonly aim: number;
}

/** One exercise of today. Plain data: the session's opening event carries it whole. */
export interface PrescribedExercise extends Omit<Lift, 'key' | 'joints' | 'needs'> {
  /** The lift's key. */
  readonly lift: string;
  /** What results are compared with: one lift, one style, one range (or the track named in the program). */
  readonly track: string;
  /** Absent in old journals, until a session of theirs is folded. */
  readonly inProgram?: InProgram;
  /** Exercises of the day with the same word here alternate their sets; absent: one after the other. */
  readonly pair?: string;
  readonly style: 'straight' | 'cluster';
  readonly basis: Basis;
  /** Null: the lifter is asked for it. */
  readonly load: Mass | null;
  /** What is really lifted: load and the body's share; null without a load or a weigh-in. */
  readonly system: Mass | null;
  readonly bar: string | null;
  readonly step: Mass | null;
  readonly range: Range;
  readonly reserve: Range;
  /** What the program asks for, before safeties or a time away raised it; absent in old journals. */
  readonly reservePlanned?: Range;
  /** Straight sets one by one; of a cluster the lead set. */
  readonly sets: readonly PrescribedSet[];
  /** What the program asks for, before any set was dropped. */
  readonly setsPlanned: number;
  readonly minis: PrescribedMinis | null;
  /** Between sets; in a cluster between its parts. */
  readonly rest: Rest;
  readonly warmUp: readonly WarmUpSet[];
  /** Does the program want warm-ups, whatever they come to? Absent in old journals. */
  readonly warmsUp?: boolean;
  readonly move: Move;
  readonly why: readonly Reason[];
  readonly last: LastTime | null;
  /** Pain was marked last time: ask before the first set. */
  readonly askPain: boolean;
  /** Joints that hurt and that it loads hard: ask before the first set. Absent where there are none. */
  readonly hurts?: readonly Joint[];
  readonly note: string | null;
  /** The last set may go on until a rep fails, to see how reserve is told. Absent where it is not offered. */
  readonly testSet?: true;
}

/** Today's session. Plain data. */
export interface Prescription {
  readonly program: string;
  readonly day: string;
  /** `2026-11-25`. */
  readonly date: string;
  readonly unit: Unit;
  readonly aim: Aim;
  readonly lighter: boolean;
  /** Sessions a week that the program asked for on that day. Absent in old journals. */
  readonly daysPerWeek?: number;
  /** Between the last set of one exercise and the first of the next. */
  readonly restBetween: Rest;
  readonly exercises: readonly PrescribedExercise[];
  /** Of a day that was cut to the time there is: the minutes, and what was cut and why. Absent from a whole day. */
  readonly short?: { readonly minutes: number; readonly cut: readonly Reason[] };
  /** Rest days, unloadable starts and other things to know before starting. */
  readonly warnings: readonly Reason[];
}
