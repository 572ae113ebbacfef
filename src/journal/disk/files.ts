import {
  closeSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  linkSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  type Stats,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { codeOf } from '../../text/disk-words.ts';
import { NO_FILE, TOO_LARGE } from './disk-trouble.ts';

/** What a folder holds. */
export interface FolderEntry {
  readonly name: string;
  /** What it is, or what it leads to; `other` for what can be neither listed nor read. */
  readonly kind: 'folder' | 'file' | 'other';
}

export interface AboutFile {
  /** In bytes. */
  readonly size: number;
  /** When it was last written to, in epoch milliseconds. */
  readonly modified: number;
  /** Which file it is, whatever its name: two names of one file have the same. */
  readonly id: string;
}

/**
 * The disk, as far as the journal uses it, so that tests can make any call fail. Every function
 * throws what the system says, with its `code`; nothing is retried or hidden here.
 */
export interface Files {
  /** Entries of a folder; none where there is no such folder. */
  readonly list: (folder: string) => readonly FolderEntry[];
  /** The bytes of a file; null where there is none. Fails where it is no file, or a huge one. */
  readonly read: (path: string) => Uint8Array | null;
  /** What the system knows of a file without reading it; null where there is none. */
  readonly about: (path: string) => AboutFile | null;
  /** The same of a file that is open. */
  readonly aboutOpen: (file: number) => AboutFile;
  /** Makes a folder and those above it, for this user alone; gives the topmost one made, or null. */
  readonly makeFolder: (path: string) => string | null;
  /** Makes a new file for this user alone and opens it; fails with EEXIST where there is one. */
  readonly create: (path: string) => number;
  /** Opens a file that exists, to read and write. */
  readonly open: (path: string) => number;
  /** Writes at a position; gives how many bytes went, which may be fewer than given. */
  readonly write: (file: number, bytes: Uint8Array, position: number) => number;
  readonly truncate: (file: number, size: number) => void;
  /** Returns once the file's content is on the disk itself. */
  readonly sync: (file: number) => void;
  readonly close: (file: number) => void;
  /** Returns once a folder's entries are on the disk itself, where the platform can tell. */
  readonly syncFolder: (path: string) => void;
  readonly remove: (path: string) => void;
  readonly rename: (from: string, to: string) => void;
  /** Gives a file a second name; fails with EEXIST where that is taken. */
  readonly link: (from: string, to: string) => void;
  /** The path without links, also of what is not there yet. */
  readonly realPath: (path: string) => string;
}

const FOR_USER_ALONE = { folder: 0o700, file: 0o600 };

/** The real disk. */
export const nodeFiles: Files = {
  list: (folder) =>
    orWhenMissing([], () =>
      readdirSync(folder, { withFileTypes: true }).map((entry) => ({
        name: entry.name,
        kind: kindOf(entry.isSymbolicLink() ? aimOf(join(folder, entry.name)) : entry),
      })),
    ),
  read: (path) =>
    orWhenMissing(null, () => {
      // A pipe or a device would never come to an end.
      const found = statSync(path);
      if (!found.isFile()) throw withCode(NO_FILE);
      if (found.size > LARGEST_FILE) throw withCode(TOO_LARGE);
      return readFileSync(path);
    }),
  about: (path) => {
    const found = statSync(path, { throwIfNoEntry: false });
    return found ? aboutOf(found) : null;
  },
  aboutOpen: (file) => aboutOf(fstatSync(file)),
  makeFolder,
  create: (path) => openSync(path, 'wx', FOR_USER_ALONE.file),
  open: (path) => openSync(path, 'r+'),
  write: (file, bytes, position) => writeSync(file, bytes, 0, bytes.length, position),
  truncate: (file, size) => ftruncateSync(file, size),
  sync: (file) => fsyncSync(file),
  close: (file) => closeSync(file),
  syncFolder,
  remove: (path) => unlinkSync(path),
  rename: (from, to) => renameSync(from, to),
  link: (from, to) => linkSync(from, to),
  realPath,
};

/** No year of training comes near it. */
const LARGEST_FILE = 64 * 1024 * 1024;

const withCode = (code: string): Error => Object.assign(new Error(code), { code });

const kindOf = (found: Pick<Stats, 'isFile' | 'isDirectory'> | null): FolderEntry['kind'] =>
  found?.isDirectory() ? 'folder' : found?.isFile() ? 'file' : 'other';

/** What a link leads to; null where that cannot be told. */
function aimOf(path: string): Stats | null {
  try {
    return statSync(path, { throwIfNoEntry: false }) ?? null;
  } catch {
    return null;
  }
}

const aboutOf = ({ size, mtimeMs, dev, ino }: Stats): AboutFile => ({
  size,
  modified: mtimeMs,
  id: `${dev}:${ino}`,
});

/**
 * Makes a folder and those above it; the topmost one made, or null. Node's own recursive call never
 * comes back where the system refuses a folder although the one above it is there, as in /proc.
 */
function makeFolder(path: string): string | null {
  const make = () => mkdirSync(path, { mode: FOR_USER_ALONE.folder });
  const above = dirname(path);
  try {
    make();
    return path;
  } catch (error) {
    if (codeOf(error) === 'EEXIST' && statSync(path).isDirectory()) return null;
    if (codeOf(error) !== 'ENOENT' || statSync(above, { throwIfNoEntry: false })) throw error;
  }
  const topmost = makeFolder(above);
  make();
  return topmost ?? path;
}

function orWhenMissing<Found, Missing>(missing: Missing, act: () => Found): Found | Missing {
  try {
    return act();
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return missing;
    throw error;
  }
}

/** Of what is not there yet: the real path of the folder above it, and its name. */
function realPath(given: string): string {
  const path = resolve(given);
  const found = orWhenMissing(null, () => realpathSync(path));
  if (found !== null || dirname(path) === path) return found ?? path;
  return join(realPath(dirname(path)), basename(path));
}

function syncFolder(path: string): void {
  // Windows has no call for it; the entry is written with the file there.
  if (process.platform === 'win32') return;
  const folder = openToSync(path);
  if (folder === null) return;
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}

/** A folder of somebody else's, such as the one above the data, may be closed to reading. */
function openToSync(path: string): number | null {
  try {
    return openSync(path, 'r');
  } catch (error) {
    if (codeOf(error) === 'EACCES') return null;
    throw error;
  }
}
