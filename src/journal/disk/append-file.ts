import { dirname, join } from 'node:path';
import type { Files } from './files.ts';

/** A file that only grows, open to be written to. */
export interface AppendFile {
  readonly path: string;
  /**
   * Returns once the bytes are on disk. When it throws what the disk says, none of them count: they
   * are cut off again, at the latest before the next bytes are written.
   */
  readonly append: (bytes: Uint8Array) => void;
  readonly close: () => void;
}

/**
 * Makes a new file with its first bytes, and returns once they, its name and the folders made for
 * it are on disk. Leaves no file behind where that fails.
 * @param root folder below which every name is made sure of, also of folders made earlier
 */
export function createFile(
  files: Files,
  path: string,
  bytes: Uint8Array,
  root = dirname(path),
): AppendFile {
  const folder = dirname(path);
  const made = files.makeFolder(folder);
  const file = files.create(path);
  try {
    const opened = appendTo(files, path, file, 0);
    opened.append(bytes);
    syncFolders(files, folder, higher(root, made === null ? root : dirname(made)));
    return opened;
  } catch (error) {
    quietly(() => files.close(file));
    quietly(() => files.remove(path));
    throw error;
  }
}

/**
 * Opens a file to go on behind its first `size` bytes. Its name may not be on disk yet, where
 * making it failed half-way and it could not be removed.
 */
export function reopenFile(files: Files, path: string, size: number, root: string): AppendFile {
  const file = files.open(path);
  try {
    syncFolders(files, dirname(path), root);
  } catch (error) {
    quietly(() => files.close(file));
    throw error;
  }
  return appendTo(files, path, file, size);
}

/** Of two folders above the same file, the one nearer to the disk's root. */
const higher = (a: string, b: string): string => (a.length < b.length ? a : b);

/** From a folder up to one that holds it, both included. */
function syncFolders(files: Files, folder: string, top: string): void {
  files.syncFolder(folder);
  const above = dirname(folder);
  if (folder !== top && above !== folder) syncFolders(files, above, top);
}

function appendTo(files: Files, path: string, file: number, start: number): AppendFile {
  let size = start;
  // Bytes of a write that failed may stand behind `size`.
  let isDirty = false;
  const cutBack = (): void => {
    files.truncate(file, size);
    files.sync(file);
    isDirty = false;
  };
  return {
    path,
    append: (bytes) => {
      if (isDirty) cutBack();
      isDirty = true;
      try {
        writeAll(files, file, bytes, size);
        // After a failed sync nobody knows what is on disk, so it is a failed write.
        files.sync(file);
      } catch (error) {
        quietly(cutBack);
        throw error;
      }
      size += bytes.length;
      isDirty = false;
    },
    close: () => files.close(file),
  };
}

/** Writes all bytes, however few go at once; throws what the disk says. */
export function writeAll(files: Files, file: number, bytes: Uint8Array, position: number): void {
  for (let done = 0; done < bytes.length; ) {
    const went = files.write(file, bytes.subarray(done), position + done);
    // The system says a full disk in this way too.
    if (went <= 0) throw Object.assign(new Error('Nothing was written.'), { code: 'ENOSPC' });
    done += went;
  }
}

/** For cleaning up after an error that is being thrown already. */
export function quietly(act: () => void): void {
  try {
    act();
  } catch {
    // The first error is the one that tells the lifter what is wrong.
  }
}

/** Writes a whole small file under a name that is not taken, and returns once it is on disk. */
export function writeNewFile(files: Files, folder: string, name: string, bytes: Uint8Array): void {
  createFile(files, join(folder, name), bytes).close();
}
