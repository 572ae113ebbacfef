import {
  closeSync,
  fsyncSync,
  ftruncateSync,
  linkSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { codeOf } from './disk-trouble.ts';
import type { Files } from './files.ts';

const FOR_USER_ALONE = { folder: 0o700, file: 0o600 };

/** The real disk. */
export const nodeFiles: Files = {
  list: (folder) =>
    orWhenMissing([], () =>
      readdirSync(folder, { withFileTypes: true }).map((entry) => ({
        name: entry.name,
        isFolder: entry.isDirectory(),
      })),
    ),
  read: (path) => orWhenMissing(null, () => readFileSync(path)),
  about: (path) => {
    const found = statSync(path, { throwIfNoEntry: false });
    return found ? { size: found.size, modified: found.mtimeMs } : null;
  },
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
