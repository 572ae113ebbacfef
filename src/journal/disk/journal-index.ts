import { join } from 'node:path';
import type { SettledPast } from '../fold-history.ts';
import { readSettled, settledText } from '../settled-text.ts';
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

/**
 * The index of a data folder in the cache folder. Everything in it is worked out from the journal,
 * so it may be deleted, and is written anew wherever it does not fit.
 * @param device this device's id, which decides what is its own
 * @param random letters for a name that is not taken
 */
export function journalIndex(
  { files, dataDir, device }: { files: Files; dataDir: string; device: string },
  cacheDir: string,
  random: () => string,
): JournalIndex {
  const path = (): string => join(cacheDir, `${dataKey(files, dataDir)}.index`);
  const head = (key: string): string => keptHead(import.meta.url, `${device} ${key}`);
  return {
    read: (key) => readKept(files, path(), head(key), readSettled),
    write: (key, past) => {
      const place = { folder: cacheDir, path: path(), random };
      writeKept(files, place, head(key), settledText(past));
    },
  };
}
