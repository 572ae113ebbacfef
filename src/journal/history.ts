import type { Temporal } from 'temporal-polyfill';
import type { Past, SessionDone } from '../progression/past.ts';
import type { Prescription } from '../progression/prescription.ts';
import type { SessionState } from '../session/state.ts';
import type { Gear } from '../training/gear.ts';
import type { Mass } from '../training/mass.ts';
import type { Damage } from './journal-file.ts';
import type { JournalEvent } from './records.ts';

export interface WeighIn {
  /** Id of its event. */
  readonly id: string;
  readonly date: Temporal.PlainDate;
  readonly mass: Mass;
}

/** Something was deleted, and its deletion not undone. */
export interface Deletion {
  /** Id of its event: what an undo names. */
  readonly id: string;
  /** Id of the event, set or session that is gone. */
  readonly of: string;
}

/** A session that was opened and neither closed nor discarded. */
export interface OpenSession {
  readonly session: string;
  readonly state: SessionState;
  /** This device wrote to it last, so it can go on without taking over. */
  readonly own: boolean;
  readonly foreign: boolean;
  /** Name of the device that went on with it last. */
  readonly device: string;
  /** Path of that file below the data folder. */
  readonly file: string;
}

/** Everything that the journal holds, each event once, corrections applied. */
export interface History extends Past {
  /** In order of date, then of being written. */
  readonly weighIns: readonly WeighIn[];
  /** As last set on any device; null where it never was. */
  readonly gear: Gear | null;
  /** In order of their start. They are not among the sessions and results. */
  readonly open: readonly OpenSession[];
  /** The sessions closed last, at most 20, in order. */
  readonly latest: readonly { readonly done: SessionDone; readonly planned: Prescription }[];
  /**
   * The sessions that were closed, with their sets and the ids of these, in the order of `sessions`.
   * Asking for them may read every file.
   */
  readonly closed: () => readonly SessionState[];
  readonly deletions: readonly Deletion[];
  readonly unreadable: readonly Damage[];
  /** Every event as it stands in the files, each once. Asking for them may read every file. */
  readonly events: () => readonly JournalEvent[];
}
