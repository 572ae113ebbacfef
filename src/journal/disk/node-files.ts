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
import { resolve } from 'node:path';
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
  modified: (path) => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? null,
  makeFolder: (path) => mkdirSync(path, { recursive: true, mode: FOR_USER_ALONE.folder }) ?? null,
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
  realPath: (path) => orWhenMissing(resolve(path), () => realpathSync(path)),
};

function orWhenMissing<Found, Missing>(missing: Missing, act: () => Found): Found | Missing {
  try {
    return act();
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return missing;
    throw error;
  }
}

function syncFolder(path: string): void {
  // Windows has no call for it; the entry is written with the file there.
  if (process.platform === 'win32') return;
  const folder = openSync(path, 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
