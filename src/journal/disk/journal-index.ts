import { join } from 'node:path';
import { once } from '../../text/once.ts';
import type { SettledPast } from '../fold-history.ts';
import { readSessions, type WrittenSessions, writtenSessions } from '../written-sessions.ts';
import { dataKey } from './device.ts';
import type { Files } from './files.ts';
import { keptHead, readKept, writeKept } from './kept-file.ts';

/** What old files came to, kept so that they need not be read at each start. */
export interface JournalIndex {
  /** Null where there is none, or it is damaged, or not of files of this key. */
  readonly read: (key: string) => SettledPast | null;
  /** Fails silently: then the files are read the next time too. */
  readonly write: (key: string, past: SettledPast) => void;
}

type Written = Omit<SettledPast, 'sessions' | 'older'> & WrittenSessions;

/**
 * The index of a data folder in the cache folder: one file that every start reads, and one of the
 * sessions before. Everything in it is worked out from the journal, so it may be deleted, and is
 * written anew wherever it does not fit.
 * @param device this device's id, which decides what is its own
 * @param random letters for a name that is not taken
 */
export function journalIndex(
  { files, dataDir, device }: { files: Files; dataDir: string; device: string },
  cacheDir: string,
  random: () => string,
): JournalIndex {
  const path = once(() => join(cacheDir, `${dataKey(files, dataDir)}.index`));
  const olderPath = () => `${path()}.older`;
  // Not the same for both: neither may be taken for the other, should their names be mixed up.
  const head = (key: string, part: 'near' | 'older'): string =>
    keptHead(import.meta.url, `${part} ${device} ${key}`);
  const place = (of: string) => ({ folder: cacheDir, path: of, random });
  return {
    read: (key) =>
      readKept(files, path(), head(key, 'near'), (text) => {
        const written = JSON.parse(text) as Written;
        const older = () =>
          readKept(files, olderPath(), head(key, 'older'), (far) =>
            readSessions(JSON.parse(far) as WrittenSessions),
          );
        return { ...written, sessions: readSessions(written), older };
      }),
    write: (key, { sessions, older, ...rest }) => {
      const far = JSON.stringify(writtenSessions(older() ?? []));
      const near = { ...rest, ...writtenSessions(sessions) } satisfies Written;
      writeKept(files, place(olderPath()), head(key, 'older'), far);
      writeKept(files, place(path()), head(key, 'near'), JSON.stringify(near));
    },
  };
}
