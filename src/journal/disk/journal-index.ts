import { createHash } from 'node:crypto';
import { basename, join } from 'node:path';
import { readSettled, type SettledPast, settledText } from '../fold-history.ts';
import { crc32 } from './crc32.ts';
import { dataKey } from './device.ts';
import { quietly, writeAll } from './event-file.ts';
import type { Files } from './files.ts';

/** What old files came to, kept so that they need not be read at each start. */
export interface JournalIndex {
  /** Null where there is none, or it is damaged, or not of files of this key. */
  readonly read: (key: string) => SettledPast | null;
  /** Fails silently: then the files are read the next time too. */
  readonly write: (key: string, past: SettledPast) => void;
}

const CHECK_DIGITS = 8;

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
  // The parts of the built program are named after what is in them, so that another version of it,
  // which may read the same journal differently, finds no index of its own.
  const head = (key: string): string =>
    createHash('sha256')
      .update(`${basename(import.meta.url)} ${device} ${key}`)
      .digest('hex');
  return {
    read: (key) => {
      let found: SettledPast | null = null;
      quietly(() => {
        const bytes = files.read(path());
        found = bytes && content(bytes, head(key));
      });
      return found;
    },
    write: (key, past) => {
      const text = Buffer.from(`${head(key)}\n${settledText(past)}`);
      quietly(() => {
        files.makeFolder(cacheDir);
        const bytes = Buffer.concat([Buffer.from(checkOf(text)), text]);
        replaceFile(files, path(), `${path()}.${random()}`, bytes);
      });
    },
  };
}

/** The check value covers all that stands behind it. */
const checkOf = (bytes: Uint8Array): string =>
  `${crc32(bytes).toString(16).padStart(CHECK_DIGITS, '0')} `;

function content(bytes: Uint8Array, head: string): SettledPast | null {
  const decoder = new TextDecoder();
  const [check, start] = [CHECK_DIGITS + 1, CHECK_DIGITS + 1 + head.length];
  if (decoder.decode(bytes.subarray(check, start)) !== head) return null;
  const isWhole = decoder.decode(bytes.subarray(0, check)) === checkOf(bytes.subarray(check));
  return isWhole ? readSettled(decoder.decode(bytes.subarray(start))) : null;
}

/** Not made sure of on disk: what a power cut leaves of it is told by its check value. */
function replaceFile(files: Files, path: string, made: string, bytes: Uint8Array): void {
  const file = files.create(made);
  try {
    try {
      writeAll(files, file, bytes, 0);
    } finally {
      files.close(file);
    }
    files.rename(made, path);
  } catch (error) {
    quietly(() => files.remove(made));
    throw error;
  }
}
