import type { Stamp } from '../../session/events.ts';
import { localDate } from '../../session/results.ts';
import type { Reading } from '../../training/reading.ts';
import type { JournalEvent } from '../records.ts';
import { deviceId } from './device-id.ts';
import { onDisk } from './disk-trouble.ts';
import { type Elsewhere, elsewhere } from './elsewhere.ts';
import { type EventFile, newEventFile, oldEventFile } from './event-file.ts';
import type { FileOnDisk } from './file-names.ts';
import type { JournalSetting } from './journal.ts';
import { journalIndex } from './journal-index.ts';
import { type LoadedJournal, loadedJournal } from './loaded-journal.ts';
import { type Lock, lockFor } from './lock.ts';
import { type JournalPlace, journalReader, readJournal } from './read-journal.ts';

const FILE_ID_LENGTH = 10;

/** What everything that writes into the journal works with. */
export interface JournalFolder {
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

export function journalFolder(setting: JournalSetting): JournalFolder {
  const { dataDir, configDir, stateDir, cacheDir, files, clock, device } = setting;
  const place = { files, dataDir, device: deviceId(files, configDir, device) };
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
    reread: (wanted) => readJournal(place, clock.read().wall, { name: wanted }),
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
