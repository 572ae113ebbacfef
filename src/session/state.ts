import type { Rest } from '../program/program.ts';
import type { Entered } from '../progression/past.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import type { Mass } from '../training/mass.ts';
import type { Reading } from '../training/reading.ts';
import type { ClusterEnd, SessionEvent, SetNumbers, SetPlace } from './events.ts';

/** A work set that was put down. */
export interface DoneSet extends SetNumbers, SetPlace {
  /** Id of its set-done event. */
  readonly id: string;
  readonly entered: Entered;
  /** For a mini-set that started by itself: the early end of the rest before it. */
  readonly startedAt: Reading | null;
  readonly at: Reading;
}

/** The work on one track within an exercise. */
export interface LiftWork {
  /** As prescribed, or as replaced since. */
  readonly prescribed: PrescribedExercise;
  /** As it stood when the first work set was put down, which is what the sets are judged by; null before. */
  readonly judgedBy: PrescribedExercise | null;
  /** Work sets in order. */
  readonly done: readonly DoneSet[];
  /** How many of them were put down before the prescription last changed. */
  readonly doneBeforeChange: number;
  readonly warmUpsDone: number;
  readonly warmUpsSkipped: boolean;
  /** Straight sets added by the lifter. */
  readonly added: number;
  /** Work sets skipped one by one. */
  readonly skipped: number;
  readonly clusterEnd: ClusterEnd | null;
  readonly pain: boolean;
}

export interface ExerciseState extends LiftWork {
  /** What is left of it is left out; choosing or replacing the exercise takes it up again. */
  readonly leftOut: boolean;
  readonly notes: readonly string[];
  /** Lifts that were given up for another with sets done or pain marked: they keep results of their own. */
  readonly earlier: readonly LiftWork[];
}

/** A rest that runs. Time left is worked out from `since` and the clock, never counted. */
export interface RunningRest {
  readonly since: Reading;
  /** From the early to the late end, in seconds, with what the lifter added or took off. */
  readonly rest: Rest;
  /** Milliseconds of this rest spent paused. */
  readonly pausedMs: number;
}

/** What the events say that the lifter does; `stageNow` adds what the time says. */
export type Stage =
  /** Before the first set of the session. */
  | { readonly kind: 'ready'; readonly next: SetPlace }
  | { readonly kind: 'resting'; readonly next: SetPlace; readonly running: RunningRest }
  | {
      readonly kind: 'lifting';
      readonly set: SetPlace;
      readonly since: Reading;
      /** Milliseconds of it spent paused. */
      readonly pausedMs: number;
    }
  /** Every set is done or left out; as-planned sets wait for one confirming key. */
  | { readonly kind: 'all-done' }
  | { readonly kind: 'closed'; readonly how: Closing };

export type Closing = 'finished' | 'as-it-is' | 'discarded';

/** The set put down last, warm-ups included, and what became of the rest since. */
export interface LastDown {
  readonly place: SetPlace;
  readonly track: string;
  readonly at: Reading;
  /** Seconds that the lifter added to the rest; negative where they were taken off. */
  readonly changedBy: number;
  readonly pausedMs: number;
}

/** A set that was put down, warm-ups included, as far as it tells what is on the bar. */
export interface LoadedSet {
  /** Id of its set-done event. */
  readonly id: string;
  readonly exercise: PrescribedExercise;
  readonly load: Mass;
}

export interface SessionState {
  readonly session: string;
  readonly device: string;
  /** As it was at the opening. */
  readonly prescription: Prescription;
  readonly exercises: readonly ExerciseState[];
  readonly stage: Stage;
  /** The exercise that the lifter is at; null before the first set. */
  readonly current: number | null;
  /** The exercise that goes first, out of the planned order; null: the planned order. */
  readonly chosen: number | null;
  /** The exercise whose turn it is because the lifter chose it, until a set of it is put down; null: whose turn it is. */
  readonly goesFirst: number | null;
  readonly lastDown: LastDown | null;
  /** Positions of the exercises whose sets alternate, two or three together. */
  readonly pairs: readonly (readonly number[])[];
  /** In order: what is on each bar, handle and belt now follows from these and the gear. */
  readonly loaded: readonly LoadedSet[];
  /** When the lifter paused, while paused. */
  readonly pausedSince: Reading | null;
  /** Milliseconds spent paused in the whole session, the pause that runs not counted. */
  readonly pausedMs: number;
  readonly openedAt: Reading;
  readonly lastAt: Reading;
  /** Minutes that local time was ahead of UTC at the opening. */
  readonly zone: number;
  readonly notes: readonly string[];
  /** Every event so far, those taken back too. */
  readonly events: readonly SessionEvent[];
}
