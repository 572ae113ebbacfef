import type { Rest } from '../program/program.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import type { Mass } from '../training/mass.ts';
import type { Reading } from '../training/reading.ts';
import type { Reason } from '../training/rule.ts';

/** Where a set stands in an exercise: warm-ups, straight sets, or a cluster's lead set and mini-sets. */
export type SetRole = 'warm-up' | 'straight' | 'lead' | 'mini';

export interface SetPlace {
  /** Position of the exercise in the session, from 0. */
  readonly exercise: number;
  readonly role: SetRole;
  /** Position among the sets of its role, from 0. */
  readonly index: number;
}

/** Numbers of a set that an amendment may replace, each as a whole. */
export interface SetNumbers {
  readonly load: Mass;
  /** Reps, or seconds where the lift counts seconds. */
  readonly count: number;
  /** Reps that could still have been done, as the lifter tells it; null where nothing was told. */
  readonly reserve: number | null;
  /** The rep after the last was tried and did not come up: a zero in reserve that is known, not told. */
  readonly failed?: boolean;
}

export type ClusterEnd = 'fewer-reps' | 'most-sets' | 'lifter';

/** Why an exercise was replaced while the session ran. */
export type Replacement = 'other-lift' | 'other-load' | 'lighter' | 'after-a-miss';

/** What is left of an exercise when there is less time; as many sets as are behind it: the rest of it is left out. */
export interface Shortened {
  readonly exercise: number;
  readonly sets: number;
  readonly rest: Rest;
}

/** What is left of a session, cut to the time there is. */
export interface ShorterSession {
  /** Minutes that there are from here on. */
  readonly minutes: number;
  /** Of each exercise with work left: what it comes to now, sets behind it too, and its rest from here on. */
  readonly exercises: readonly Shortened[];
  /** Exercises whose sets alternate from here on. Absent in old journals. */
  readonly pairs?: readonly (readonly number[])[];
  readonly restBetween: Rest;
  /** What was cut, and why. */
  readonly cut: readonly Reason[];
}

/**
 * What happened in a session, as facts that carry all they need: a fold over them never asks
 * progression, and a fold by a newer version gives the same results.
 */
export type SessionFact =
  | {
      readonly type: 'session-opened';
      readonly session: string;
      readonly device: string;
      readonly prescription: Prescription;
    }
  | ({ readonly type: 'set-started' } & SetPlace)
  /** Takes back a start: the lifter was not ready. */
  | { readonly type: 'start-withdrawn' }
  | ({ readonly type: 'set-done'; readonly entered: 'as-planned' | 'typed' } & SetPlace &
      SetNumbers)
  /** `of`: id of the set-done event. */
  | ({ readonly type: 'set-amended'; readonly of: string } & Partial<SetNumbers>)
  /** The lifter has seen these as-planned sets and says that they are right. */
  | { readonly type: 'sets-confirmed'; readonly of: readonly string[] }
  /** A straight set is left out; the sets after it stand. */
  | ({ readonly type: 'set-skipped' } & SetPlace)
  /** The warm-ups of the exercise that were not done yet are left out. */
  | { readonly type: 'warm-ups-skipped'; readonly exercise: number }
  /** The rest of the exercise is left out. */
  | { readonly type: 'exercise-skipped'; readonly exercise: number }
  /** The lifter goes on with this exercise next, out of the planned order. */
  | { readonly type: 'exercise-chosen'; readonly exercise: number }
  /** The sets of these exercises alternate from here on. */
  | { readonly type: 'paired'; readonly exercises: readonly number[] }
  /** The exercises that alternate with this one are done one after the other again. */
  | { readonly type: 'pair-parted'; readonly exercise: number }
  | { readonly type: 'set-added'; readonly exercise: number }
  /** There is less time than was thought. */
  | ({ readonly type: 'day-shortened' } & ShorterSession)
  | { readonly type: 'cluster-ended'; readonly exercise: number; readonly reason: ClusterEnd }
  /** Numbers were corrected, and as they are now they do not end the cluster. */
  | { readonly type: 'cluster-resumed'; readonly exercise: number }
  | {
      readonly type: 'exercise-replaced';
      readonly exercise: number;
      readonly by: PrescribedExercise;
      readonly because: Replacement;
    }
  /** Seconds added to the present rest; negative shortens it. */
  | { readonly type: 'rest-changed'; readonly by: number }
  | { readonly type: 'paused' }
  | { readonly type: 'resumed' }
  | { readonly type: 'pain-marked'; readonly exercise: number }
  | { readonly type: 'note-written'; readonly exercise: number | null; readonly text: string }
  /** Takes back any one act, with what the rules made of it; undoing an undo restores both. */
  | { readonly type: 'undone'; readonly of: string }
  | { readonly type: 'session-closed'; readonly how: 'finished' | 'as-it-is' }
  | { readonly type: 'session-discarded' };

/** What every event carries beside its fact. */
export interface Stamp {
  /** File id, `:`, sequence number. */
  readonly id: string;
  readonly at: Reading;
  /** Minutes that local time is ahead of UTC. */
  readonly zone: number;
}

export type SessionEvent = SessionFact & Stamp;
