import { basename, dirname, join } from 'node:path';
import type { Files } from '../../src/journal/disk/files.ts';

interface Node {
  readonly id: string;
  bytes: Uint8Array;
  /** What a power cut leaves. */
  synced: Uint8Array;
  modified: number;
}

/** A disk in memory that knows what was synced. */
export interface MemoryDisk {
  readonly files: Files;
  readonly paths: () => readonly string[];
  readonly bytes: (path: string) => Uint8Array;
  readonly put: (path: string, bytes: Uint8Array) => void;
  /**
   * The disk as it comes back after the power went: nothing that was not synced; with `numbers`
   * they decide of each name and each byte that was not, for a disk may write in any order.
   */
  readonly afterPowerCut: (numbers?: (below: number) => number) => MemoryDisk;
  /** A copy of the files below a folder, under another one. */
  readonly copyInto: (from: string, other: MemoryDisk, to: string) => void;
  now: number;
}

export const systemError = (code: string): Error => Object.assign(new Error(code), { code });

/** Bytes of a file after the power went: those synced, and of the others those that chance wrote. */
function leftOf({ bytes, synced }: Node, numbers?: (below: number) => number): Uint8Array {
  if (!numbers) return synced;
  const length = synced.length + numbers(Math.max(1, bytes.length - synced.length + 1));
  const left = new Uint8Array(Math.max(synced.length, length));
  left.set(synced);
  // A page that was never written is all zeroes.
  if (numbers(3) > 0) left.set(bytes.subarray(synced.length, left.length), synced.length);
  return left;
}

const aboutOf = ({ id, bytes, modified }: Node) => ({ id, size: bytes.length, modified });

export function memoryDisk(): MemoryDisk {
  const nodes = new Map<string, Node>();
  const syncedNames = new Set<string>();
  const folders = new Set<string>(['/', '/home', '/home/lifter']);
  const syncedFolders = new Set<string>(folders);
  const open = new Map<number, Node>();
  let nextFile = 3;
  let made = 0;

  const opened = (file: number): Node => {
    const node = open.get(file);
    if (!node) throw systemError('EBADF');
    return node;
  };
  const newNode = (bytes: Uint8Array): Node => {
    made += 1;
    return { id: String(made), bytes, synced: bytes, modified: disk.now };
  };
  const use = (node: Node): number => {
    nextFile += 1;
    open.set(nextFile, node);
    return nextFile;
  };
  const addFolder = (path: string): string | null => {
    if (folders.has(path)) return null;
    const above = addFolder(dirname(path));
    folders.add(path);
    return above ?? path;
  };
  const children = (folder: string) => [
    ...[...folders]
      .filter((path) => path !== '/' && dirname(path) === folder)
      .map((path) => ({ name: basename(path), kind: 'folder' as const })),
    ...[...nodes.keys()]
      .filter((path) => dirname(path) === folder)
      .map((path) => ({ name: basename(path), kind: 'file' as const })),
  ];
  const need = (path: string): Node => {
    const node = nodes.get(path);
    if (!node) throw systemError('ENOENT');
    return node;
  };

  const isReachable = (folder: string): boolean =>
    syncedFolders.has(folder) && (folder === '/' || isReachable(dirname(folder)));

  const disk: MemoryDisk = {
    now: 0,
    files: {
      list: (folder) =>
        folders.has(folder) ? children(folder).sort((a, b) => (a.name < b.name ? -1 : 1)) : [],
      read: (path) => nodes.get(path)?.bytes.slice() ?? null,
      about: (path) => {
        const node = nodes.get(path);
        return node ? aboutOf(node) : null;
      },
      aboutOpen: (file) => aboutOf(opened(file)),
      makeFolder: addFolder,
      create: (path) => {
        if (nodes.has(path)) throw systemError('EEXIST');
        if (!folders.has(dirname(path))) throw systemError('ENOENT');
        const node = newNode(new Uint8Array());
        nodes.set(path, node);
        return use(node);
      },
      open: (path) => use(need(path)),
      write: (file, bytes, position) => {
        const node = opened(file);
        const grown = new Uint8Array(Math.max(node.bytes.length, position + bytes.length));
        grown.set(node.bytes);
        grown.set(bytes, position);
        node.bytes = grown;
        node.modified = disk.now;
        return bytes.length;
      },
      truncate: (file, size) => {
        const node = opened(file);
        node.bytes = node.bytes.slice(0, size);
      },
      sync: (file) => {
        const node = opened(file);
        node.synced = node.bytes.slice();
      },
      close: (file) => void open.delete(file),
      syncFolder: (folder) => {
        for (const path of nodes.keys()) if (dirname(path) === folder) syncedNames.add(path);
        for (const path of folders) if (dirname(path) === folder) syncedFolders.add(path);
      },
      remove: (path) => {
        need(path);
        nodes.delete(path);
        syncedNames.delete(path);
      },
      rename: (from, to) => {
        nodes.set(to, need(from));
        nodes.delete(from);
      },
      link: (from, to) => {
        if (nodes.has(to)) throw systemError('EEXIST');
        nodes.set(to, need(from));
      },
      realPath: (path) => path,
    },
    paths: () => [...nodes.keys()].sort(),
    bytes: (path) => need(path).bytes,
    put: (path, bytes) => {
      addFolder(dirname(path));
      nodes.set(path, newNode(bytes));
    },
    afterPowerCut: (numbers) => {
      const kept = memoryDisk();
      for (const [path, node] of nodes) {
        const isNamed = syncedNames.has(path) && isReachable(dirname(path));
        if (isNamed || numbers?.(2) === 1) kept.put(path, leftOf(node, numbers));
      }
      return kept;
    },
    copyInto: (from, other, to) => {
      for (const [path, { bytes }] of nodes) {
        if (path.startsWith(`${from}/`)) other.put(join(to, path.slice(from.length + 1)), bytes);
      }
    },
  };
  return disk;
}
