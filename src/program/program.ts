import type { Lift } from '../training/lift.ts';
import type { Mass, Unit } from '../training/mass.ts';

export type Aim = 'cut' | 'maintain' | 'build';

/** A closed range of whole numbers: reps, seconds or reps in reserve. */
export type Range = readonly [low: number, high: number];

/** Seconds of rest, from the early end to the late end. */
export interface Rest {
  readonly from: number;
  readonly to: number;
}

interface ExerciseBase {
  readonly lift: Lift;
  /** Reps in reserve to stop at. */
  readonly reserve: Range;
  /** First-session load by the lift's loading: total on the bar, per hand, on the stack, or added to the body (negative = assistance). */
  readonly start: Mass | null;
  /** Name of the bar in gear; null for the first one owned. */
  readonly bar: string | null;
  /** Loads go by this step in place of the gear owned. */
  readonly step: Mass | null;
  /** Names the track where the lifter wants two exercises to progress as one. */
  readonly track: string | null;
  /** Exercises of the day with the same word here alternate their sets; absent: one after the other. */
  readonly pair?: string;
  readonly warmUp: boolean;
  readonly note: string | null;
  /** Findings of the check that the lifter has accepted, by rule key, with the reason. */
  readonly accept: Readonly<Record<string, string>>;
  readonly place: Place;
}

export interface StraightExercise extends ExerciseBase {
  readonly style: 'straight';
  readonly sets: number;
  /** Reps, or seconds where the lift counts seconds. */
  readonly range: Range;
  /** Between sets. */
  readonly rest: Rest;
}

export interface ClusterExercise extends ExerciseBase {
  readonly style: 'cluster';
  /** Reps of the lead set. */
  readonly range: Range;
  /** Between the lead set and its mini-sets, and between mini-sets. */
  readonly rest: Rest;
  /** The lead set and its mini-sets together. */
  readonly mostSets: number;
}

/** A lift as prescribed in a day. */
export type Exercise = StraightExercise | ClusterExercise;

/** Straight sets, or the lead and mini-sets of a cluster. */
export const setsOf = (exercise: Exercise): number =>
  exercise.style === 'cluster' ? exercise.mostSets : exercise.sets;

export interface Day {
  readonly name: string;
  readonly exercises: readonly Exercise[];
  readonly place: Place;
}

export interface Program {
  readonly name: string;
  /** Where it was read from, as the lifter gave it. */
  readonly file: string;
  readonly unit: Unit;
  readonly aim: Aim;
  readonly daysPerWeek: number;
  /** First day of the cut where the lifter named it, as `2026-11-25`. */
  readonly cutFrom: string | null;
  /** Wanted rate of loss, in percent of body weight a week. */
  readonly rate: readonly [low: number, high: number];
  /** Body weight and day, as `2027-02-01`, that the cut leads to; both null where the lifter named neither. */
  readonly goal: { readonly mass: Mass | null; readonly date: string | null };
  /** Body weight follows a monthly cycle, so its rate is read over four weeks. */
  readonly monthlyCycle: boolean;
  /** Rest between the last set of one exercise and the first of the next. */
  readonly restBetween: Rest;
  readonly days: readonly Day[];
  /** Every lift the program may name: the catalogue with the program's own on top. */
  readonly lifts: ReadonlyMap<string, Lift>;
  readonly accept: Readonly<Record<string, string>>;
}

/** What of a program decides how one of its exercises goes on. */
export type Plan = Pick<Program, 'aim' | 'cutFrom' | 'days' | 'daysPerWeek'>;

/** Where something stands in a program file; both count from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}
