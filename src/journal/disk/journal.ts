import type { Prescription } from '../../progression/prescription.ts';
import type { SessionFact } from '../../session/events.ts';
import type { SessionState } from '../../session/state.ts';
import type { Problem } from '../../text/problem.ts';
import type { Reading } from '../../training/reading.ts';
import type { History } from '../history.ts';
import type { Correction, JournalEvent, LooseFact } from '../records.ts';
import type { Device } from './device.ts';
import type { Files } from './files.ts';

/** The time, as far as the journal needs it. */
export interface JournalClock {
  readonly read: () => Reading;
  /** Minutes that local time is ahead of UTC at an instant. */
  readonly zone: (wall: number) => number;
}

export interface JournalSetting {
  readonly dataDir: string;
  readonly stateDir: string;
  readonly configDir: string;
  /** Where an index of old files may be kept; absent: they are read each time. */
  readonly cacheDir?: string;
  readonly files: Files;
  readonly clock: JournalClock;
  readonly device: Device;
}

/** A session that this process writes. */
export interface SessionWriter {
  readonly session: string;
  /** As of what is on disk. */
  readonly state: () => SessionState;
  /**
   * Writes the facts of one command at once; gives the new state once they are on disk.
   * @param at the instant they were decided with
   * @throws Refusal when they could not be saved: then none of them count, here or on disk.
   */
  readonly write: (facts: readonly SessionFact[], at: Reading) => SessionState;
  readonly close: () => void;
}

/** What can be recorded outside a running session. */
export type Recordable = Exclude<LooseFact, { type: 'session-taken-over' }> | Correction;

/** A session from elsewhere, whole. */
export interface SessionToImport {
  readonly start: number;
  /** When its last set was put down; null where that is not known. */
  readonly end: number | null;
  readonly zone: number;
  readonly facts: readonly SessionFact[];
}

/** The lifter's data on disk. Every function that writes returns once it is on disk, or throws a Refusal. */
export interface Journal {
  /** Read once, and kept in step with what this process writes. */
  readonly history: () => History;
  /** Forgets what was read, for what other devices or processes wrote since. */
  readonly reload: () => void;
  /** Did another process or device write to this month's files since this was last asked? */
  readonly changedElsewhere: () => boolean;
  /** Reads every file, old ones too, so that {@link problems} misses none that came about on the disk. */
  readonly readAnew: () => void;
  /** Opens a new session; takes the lock. */
  readonly beginSession: (prescription: Prescription) => SessionWriter;
  /** Goes on with an open session, taking it over from another device where need be; takes the lock. */
  readonly resumeSession: (session: string) => SessionWriter;
  /** Writes into this device's file of the month; gives the event. */
  readonly record: (fact: Recordable) => JournalEvent;
  /** Facts of long ago, now, into one new file in the month of a day; gives their events. */
  readonly recordOf: (day: string, facts: readonly Recordable[]) => readonly JournalEvent[];
  readonly importSession: (session: SessionToImport) => void;
  /** Events with the ids they had elsewhere; those of one file together. */
  readonly importEvents: (events: readonly JournalEvent[]) => void;
  /** Cuts half-written ends off this device's files; says what it did. Takes the lock. */
  readonly repair: () => readonly string[];
  readonly lock: () => boolean;
  /** Ends writing: what was saved in a file that is gone since is written anew, and the lock let go. */
  readonly release: () => void;
  readonly problems: () => readonly Problem[];
  /** Tries whether something could be saved; what stands in the way, or null. Leaves nothing behind. */
  readonly trySaving: () => Problem | null;
}
