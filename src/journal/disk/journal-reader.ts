import { type SettledPast, settledPast } from '../settled-past.ts';
import type { JournalIndex } from './journal-index.ts';
import { monthOf, type OldFiles, oldFiles } from './old-files.ts';
import { type FileOnDisk, type JournalPlace, readJournal } from './read-journal.ts';

/** What old files came to, and the files since. */
export interface Recent {
  readonly past: SettledPast;
  readonly files: readonly FileOnDisk[];
  readonly isOld: (month: string) => boolean;
}

/** Reads the journal of a data folder, whole or with the help of its index. */
export interface JournalReader {
  /** Every file; makes an index for the next start where {@link recent} found none that fits. */
  readonly all: () => readonly FileOnDisk[];
  /** Every file, whatever the index says, which is then made anew. */
  readonly anew: () => readonly FileOnDisk[];
  /** Null where no index fits. */
  readonly recent: () => Recent | null;
}

export interface ReaderClock {
  /** Now, in epoch milliseconds. */
  readonly wall: () => number;
  /** The local day now. */
  readonly today: () => string;
}

export function journalReader(
  place: JournalPlace,
  { wall, today }: ReaderClock,
  index: JournalIndex | null,
): JournalReader {
  let missing: OldFiles | null = null;
  const keep = ({ key, isOld }: OldFiles, files: readonly FileOnDisk[]): void => {
    if (!index || key === null) return;
    const past = settledPast(files.filter(({ name }) => isOld(monthOf(name))));
    if (past.sessions.length > 0) index.write(key, past);
  };
  const all = (): readonly FileOnDisk[] => {
    const files = readJournal(place, wall());
    if (missing) keep(missing, files);
    missing = null;
    return files;
  };
  return {
    all,
    anew: () => {
      missing = index && oldFiles(place, today(), wall());
      return all();
    },
    recent: () => {
      if (!index) return null;
      const old = oldFiles(place, today(), wall());
      const past = old.key === null ? null : index.read(old.key);
      missing = past ? null : old;
      if (!past) return null;
      const { isOld } = old;
      return { past, isOld, files: readJournal(place, wall(), (_, month) => !isOld(month)) };
    },
  };
}
