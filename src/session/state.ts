import type { Entered } from '../progression/past.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import type { Rest } from '../program/program.ts';
import type { Reading } from '../training/reading.ts';
import type { ClusterEnd, SetNumbers, SetPlace } from './events.ts';

/** A set that was put down. */
export interface DoneSet extends SetNumbers, SetPlace {
  /** Id of its set-done event. */
  readonly id: string;
  readonly entered: Entered;
  readonly startedAt: Reading | null;
  readonly at: Reading;
}

export interface ExerciseState {
  /** As prescribed, or as replaced since. */
  readonly prescribed: PrescribedExercise;
  /** Work sets in order. */
  readonly done: readonly DoneSet[];
  readonly warmUpsDone: number;
  /** Straight sets added by the lifter. */
  readonly added: number;
  /** Work sets skipped one by one. */
  readonly skipped: number;
  readonly leftOut: boolean;
  readonly clusterEnd: ClusterEnd | null;
  readonly pain: boolean;
  readonly notes: readonly string[];
}

/** A rest that runs. Time left is worked out from `since` and the clock, never counted. */
export interface RunningRest {
  readonly since: Reading;
  /** From the early to the late end, in seconds, with what the lifter added or took off. */
  readonly rest: Rest;
  /** Milliseconds of this rest spent paused. */
  readonly pausedMs: number;
}

/** What the lifter does now. */
export type Stage =
  /** Before a set that no rest leads to: the first of the session, or after a change of plan. */
  | { readonly kind: 'ready'; readonly next: SetPlace }
  | { readonly kind: 'resting'; readonly next: SetPlace; readonly running: RunningRest }
  | { readonly kind: 'lifting'; readonly set: SetPlace; readonly since: Reading }
  /** Every set is done or left out; as-planned sets wait for one confirming key. */
  | { readonly kind: 'all-done' }
  | { readonly kind: 'closed'; readonly how: 'finished' | 'as-it-is' | 'discarded' };

export interface SessionState {
  readonly session: string;
  readonly device: string;
  readonly prescription: Prescription;
  readonly exercises: readonly ExerciseState[];
  readonly stage: Stage;
  /** When the lifter paused, while paused. */
  readonly pausedSince: Reading | null;
  readonly openedAt: Reading;
  readonly lastAt: Reading;
  /** Minutes that local time was ahead of UTC at the opening. */
  readonly zone: number;
  readonly notes: readonly string[];
}
