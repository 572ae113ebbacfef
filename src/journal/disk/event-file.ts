import { basename, dirname, join } from 'node:path';
import { Refusal } from '../../text/problem.ts';
import { encodeLine } from '../lines.ts';
import { readEvent } from '../read-event.ts';
import type { JournalEvent } from '../records.ts';
import { crc32 } from './crc32.ts';
import { type FileOnDisk, pathOf, readName } from './file-names.ts';
import type { Files } from './files.ts';

/** A journal file of this device that is being written to. */
export interface EventFile {
  readonly path: string;
  /** Path below the data folder. */
  readonly name: string;
  /** Ids for the next events, in order; taken only once these are written. */
  readonly nextIds: (count: number) => readonly string[];
  /**
   * Returns once the events are on disk, all at once; throws what the disk says. False where the
   * name leads to another file by now, or somebody else wrote to it: then they do not count, and
   * nothing can be written here any more.
   */
  readonly append: (events: readonly JournalEvent[]) => boolean;
  readonly isAsLeft: () => boolean;
  readonly close: () => void;
}

/** Makes a new file with its first events, whose ids carry the name's id. */
export function newEventFile(
  files: Files,
  dataDir: string,
  name: { readonly day: string; readonly device: string; readonly id: string },
  first: readonly JournalEvent[],
): EventFile {
  const below = pathOf(name);
  const file = createFile(files, join(dataDir, below), linesOf(first), dirname(dataDir));
  return eventFile(file, below, name.id, first.length);
}

/**
 * Goes on with a file of this device, as it was just read; a half-written end is cut off and kept
 * beside it. Null where the file was copied or imported.
 */
export function oldEventFile(
  files: Files,
  dataDir: string,
  found: FileOnDisk,
  cutSuffix: string,
): EventFile | null {
  const name = readName(found.path);
  const last = found.lines.at(-1);
  const id = last?.kind === 'event' ? last.event.id : last?.kind === 'newer' ? last.id : null;
  // A file under a name that its events do not carry was copied or imported: its numbers are not ours.
  if (!name || !id?.startsWith(`${name.id}:`)) return null;
  repairTail(files, found.path, found.wholeBytes, cutSuffix);
  const next = Number(id.slice(name.id.length + 1)) + 1;
  return eventFile(
    reopenFile(files, found.path, found.wholeBytes, dirname(dataDir)),
    found.name,
    name.id,
    next,
  );
}

function eventFile(file: AppendFile, name: string, id: string, start: number): EventFile {
  let next = start;
  return {
    path: file.path,
    name,
    nextIds: (count) => Array.from({ length: count }, (_, at) => `${id}:${next + at}`),
    append: (events) => {
      const isKept = file.append(linesOf(events));
      if (isKept) next += events.length;
      return isKept;
    },
    isAsLeft: file.isAsLeft,
    close: file.close,
  };
}

/** @throws Refusal for what would be "not understood" when it is read again: it must not be called saved. */
function linesOf(events: readonly JournalEvent[]): Uint8Array {
  const lost = events.find((event) => readEvent(event) === null);
  if (lost) {
    throw new Refusal({
      what: `Nothing was saved: a number, a day or a text in it (${lost.type}) is outside of what is kept.`,
      fix: 'Look for one that is far too large, too long or too long ago, and mend it.',
    });
  }
  const lines = events.map((event) => encodeLine(event, crc32));
  const bytes = new Uint8Array(lines.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const line of lines) {
    bytes.set(line, at);
    at += line.length;
  }
  return bytes;
}

/** A file that only grows, open to be written to. */
interface AppendFile {
  readonly path: string;
  /**
   * Returns once the bytes are on disk. When it throws what the disk says, none of them count: they
   * are cut off again, at the latest before the next bytes are written. False where this is not the
   * file any more that its name leads to, or where it is not as long as it was left.
   */
  readonly append: (bytes: Uint8Array) => boolean;
  readonly isAsLeft: () => boolean;
  readonly close: () => void;
}

/**
 * Makes a new file with its first bytes, and returns once they, its name and the folders made for
 * it are on disk. It gets its name once the bytes are on disk, so that a file without a whole line
 * is never one that was only begun. Leaves no file behind where that fails.
 * @param root folder below which every name is made sure of, also of folders made earlier
 */
function createFile(files: Files, path: string, bytes: Uint8Array, root: string): AppendFile {
  const folder = dirname(path);
  const made = files.makeFolder(folder);
  const beside = `${path}.new`;
  const file = files.create(beside);
  let name = beside;
  try {
    writeAll(files, file, bytes, 0);
    files.sync(file);
    files.rename(beside, path);
    name = path;
    syncFolders(files, folder, higher(root, made === null ? root : dirname(made)));
    return appendTo(files, path, file, bytes.length);
  } catch (error) {
    quietly(() => files.close(file));
    quietly(() => files.remove(name));
    throw error;
  }
}

/**
 * Opens a file to go on behind its first `size` bytes. Its name may not be on disk yet, where
 * making it failed half-way and it could not be removed.
 */
function reopenFile(files: Files, path: string, size: number, root: string): AppendFile {
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
  // Bytes of a write that failed may stand behind `size`, so many at most.
  let tried = 0;
  let isDirty = false;
  // A syncer or git put another file under the name, or another process wrote to this one.
  let isGone = false;
  const isBetween = (least: number, most: number): boolean => {
    const held = files.aboutOpen(file);
    const isNamed = files.about(path)?.id === held.id;
    return isNamed && held.size >= least && held.size <= most;
  };
  const isAsLeft = (): boolean => isBetween(size, isDirty ? size + tried : size);
  const cutBack = (): void => {
    files.truncate(file, size);
    files.sync(file);
    isDirty = false;
  };
  return {
    path,
    append: (bytes) => {
      isGone ||= !isAsLeft();
      if (isGone) return false;
      if (isDirty) cutBack();
      isDirty = true;
      tried = bytes.length;
      const end = size + bytes.length;
      try {
        writeAll(files, file, bytes, size);
        // After a failed sync nobody knows what is on disk, so it is a failed write.
        files.sync(file);
        // In a file that lost its name meanwhile nobody finds them.
        isGone = !isBetween(end, end);
      } catch (error) {
        quietly(cutBack);
        throw error;
      }
      if (isGone) return false;
      size = end;
      isDirty = false;
      return true;
    },
    isAsLeft,
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
  const path = join(folder, name);
  const made = files.makeFolder(folder);
  const file = files.create(path);
  try {
    try {
      writeAll(files, file, bytes, 0);
      files.sync(file);
    } finally {
      files.close(file);
    }
    syncFolders(files, folder, made === null ? folder : dirname(made));
  } catch (error) {
    quietly(() => files.remove(path));
    throw error;
  }
}

/**
 * Cuts a file back to its whole lines. What is cut off is first kept beside it, on disk.
 * @param suffix random letters for the name of the file that keeps it
 */
export function repairTail(files: Files, path: string, wholeBytes: number, suffix: string): void {
  const bytes = files.read(path);
  if (!bytes || bytes.length <= wholeBytes) return;
  const kept = `${basename(path)}.cut-${suffix}`;
  writeNewFile(files, dirname(path), kept, bytes.subarray(wholeBytes));
  const file = files.open(path);
  try {
    files.truncate(file, wholeBytes);
    files.sync(file);
  } finally {
    files.close(file);
  }
}
