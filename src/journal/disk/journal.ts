import type { Prescription } from '../../progression/prescription.ts';
import type { SessionFact, Stamp } from '../../session/events.ts';
import { localDate } from '../../session/results.ts';
import type { SessionState } from '../../session/state.ts';
import type { Problem } from '../../text/problem.ts';
import type { Reading } from '../../training/reading.ts';
import type { History } from '../history.ts';
import type { Correction, JournalEvent, LooseFact } from '../records.ts';
import type { Device } from './device.ts';
import { deviceId } from './device-id.ts';
import { onDisk } from './disk-trouble.ts';
import { type Elsewhere, elsewhere } from './elsewhere.ts';
import { type EventFile, newEventFile, oldEventFile } from './event-file.ts';
import type { FileOnDisk } from './file-names.ts';
import type { Files } from './files.ts';
import { journalIndex } from './journal-index.ts';
import { type LoadedJournal, loadedJournal } from './loaded-journal.ts';
import { type Lock, lockFor } from './lock.ts';
import { type JournalPlace, journalReader, readJournal } from './read-journal.ts';

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

const FILE_ID_LENGTH = 10;

/** What everything that writes into the journal works with. */
export interface JournalDesk {
  readonly setting: JournalSetting;
  readonly place: JournalPlace;
  readonly lock: Lock;
  readonly loaded: LoadedJournal;
  /** Instant and zone of an event; now by default. */
  readonly stamp: (at?: Reading) => Pick<Stamp, 'at' | 'zone'>;
  /** The local day now. */
  readonly today: () => string;
  readonly elsewhere: Elsewhere;
  /** Reads some files anew, by their names. */
  readonly reread: (wanted: (name: string) => boolean) => FileOnDisk[];
  /** Makes a new file with its first events, told the file's id; of today, unless another day is named. */
  readonly create: (first: (id: string) => readonly JournalEvent[], day?: string) => EventFile;
  /** Goes on with a file that was just read; null where its numbers are not this device's. */
  readonly reopen: (found: FileOnDisk) => EventFile | null;
  /**
   * Writes behind what stands in a file; gives the events once they are on disk. Null where the file
   * is not there any more as it was left: then none of them count.
   */
  readonly append: <Fact extends object>(
    file: EventFile,
    facts: readonly Fact[],
    at?: Reading,
  ) => readonly (Fact & Stamp)[] | null;
}

export function journalDesk(setting: JournalSetting): JournalDesk {
  const { dataDir, configDir, stateDir, cacheDir, files, clock, device } = setting;
  const place = { files, dataDir, device: deviceId(files, configDir, device) };
  const read = (wanted?: (name: string) => boolean) =>
    readJournal(place, clock.read().wall, wanted);
  const stamp = (at = clock.read()) => ({ at, zone: clock.zone(at.wall) });
  const today = () => {
    const { at, zone } = stamp();
    return localDate(at.wall, zone).toString();
  };
  const index =
    cacheDir === undefined ? null : journalIndex(place, cacheDir, () => device.random(8));
  const loaded = loadedJournal(
    journalReader(place, { wall: () => clock.read().wall, today }, index),
  );
  const others = elsewhere(place, () => today().slice(0, 7));
  return {
    setting,
    place,
    elsewhere: others,
    lock: lockFor(files, stateDir, dataDir, device, () => clock.read().wall),
    loaded,
    stamp,
    today,
    reread: read,
    create: (first, day = today()) => {
      const id = device.random(FILE_ID_LENGTH);
      const events = first(id);
      const name = { day, device: place.device, id };
      const file = onDisk(`Nothing was saved in ${dataDir}`, () =>
        newEventFile(files, dataDir, name, events),
      );
      others.own(file.path);
      loaded.wrote(file, events);
      return file;
    },
    reopen: (found) =>
      onDisk(`${found.path} could not be opened to go on`, () =>
        oldEventFile(files, dataDir, found, device.random(FILE_ID_LENGTH)),
      ),
    append: (file, facts, at) => {
      const ids = file.nextIds(facts.length);
      const stamped = facts.map((fact, index) => ({ ...fact, id: ids[index] ?? '', ...stamp(at) }));
      // Facts of the journal with a stamp are its events; the compiler cannot see it through `Fact`.
      const events = stamped as unknown as readonly JournalEvent[];
      // The folder and not the file: the sentence has to fit a small screen.
      const isKept = onDisk(`Nothing was saved in ${dataDir}`, () => file.append(events));
      if (!isKept) return null;
      others.own(file.path);
      loaded.wrote(file, events);
      return stamped;
    },
  };
}
