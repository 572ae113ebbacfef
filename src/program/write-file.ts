import {
  closeSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { diskSentence } from '../text/disk-words.ts';
import type { Problem } from '../text/problem.ts';

/** The disk as far as writing a whole file needs it. All throw what the system says. */
export interface WholeFileDisk {
  /** The path without links; of a file that is not there yet, the path itself. */
  readonly realPath: (path: string) => string;
  /** Rights of the file that is replaced; those of a new file where there is none. */
  readonly mode: (path: string) => number;
  /** Makes a new file; fails where there is one. */
  readonly create: (path: string, mode: number) => number;
  /** Gives how many bytes went, which may be fewer than given. */
  readonly write: (file: number, bytes: Uint8Array) => number;
  readonly sync: (file: number) => void;
  /** Returns once the names in a folder are on the disk itself, where the platform can tell. */
  readonly syncFolder: (path: string) => void;
  readonly close: (file: number) => void;
  readonly rename: (from: string, to: string) => void;
  readonly remove: (path: string) => void;
}

const nodeDisk: WholeFileDisk = {
  realPath: (path) => (statSync(path, { throwIfNoEntry: false }) ? realpathSync(path) : path),
  mode: (path) => (statSync(path, { throwIfNoEntry: false })?.mode ?? 0o600) & 0o777,
  create: (path, mode) => openSync(path, 'wx', mode),
  write: (file, bytes) => writeSync(file, bytes),
  sync: fsyncSync,
  syncFolder: (path) => {
    const folder = openSync(path, 'r');
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  },
  close: closeSync,
  rename: renameSync,
  remove: unlinkSync,
};

/**
 * Puts a text in the place of a file, all of it or nothing: it is written beside the file, flushed
 * to the disk, and only then takes the file's name. Null when that is done; a problem when the file
 * is still as it was. `unique` tells this write from any other.
 */
export function writeWholeFile(
  path: string,
  text: string,
  unique: string,
  disk: WholeFileDisk = nodeDisk,
): Problem | null {
  const bytes = new TextEncoder().encode(text);
  let beside: string | null = null;
  try {
    const target = disk.realPath(path);
    const name = join(dirname(target), `.holdfast-${unique}.new`);
    const file = disk.create(name, disk.mode(target));
    beside = name;
    try {
      for (let done = 0; done < bytes.length; ) {
        const went = disk.write(file, bytes.subarray(done));
        // The system says a full disk in this way too.
        if (went <= 0) throw Object.assign(new Error('Nothing was written.'), { code: 'ENOSPC' });
        done += went;
      }
      disk.sync(file);
    } finally {
      disk.close(file);
    }
    disk.rename(name, target);
    beside = null;
    // Where this fails the new text stands there, only not yet for ever.
    syncQuietly(disk, dirname(target));
    return null;
  } catch (error) {
    if (beside !== null) removeQuietly(disk, beside);
    return trouble(path, error);
  }
}

function removeQuietly(disk: WholeFileDisk, path: string): void {
  try {
    disk.remove(path);
  } catch {
    // The disk is in trouble already; the problem that is told is the first one.
  }
}

function syncQuietly(disk: WholeFileDisk, folder: string): void {
  try {
    disk.syncFolder(folder);
  } catch {
    // Not every disk can; the file itself is on it.
  }
}

function trouble(path: string, error: unknown): Problem {
  return {
    what: `${path} could not be written and is as it was.`,
    why: diskSentence(error),
    fix: 'Mend that and try again.',
  };
}
