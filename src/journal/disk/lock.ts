import { basename, join } from 'node:path';
import { codeOf } from '../../text/disk-words.ts';
import { Refusal } from '../../text/problem.ts';
import { type Device, dataKey } from './device.ts';
import { onDisk } from './disk-trouble.ts';
import { quietly, writeNewFile } from './event-file.ts';
import type { Files } from './files.ts';

/** The process that holds a lock. */
interface Holder {
  readonly pid: number;
  readonly boot: string | null;
  /** Locks of older versions name none. */
  readonly space?: string | null;
  readonly start: string | null;
}

/** One process at a time writes sessions into a data folder. */
export interface Lock {
  readonly isHeld: () => boolean;
  /** Takes the lock where it is free or its holder is gone; false where another process has it. */
  readonly take: () => boolean;
  /** @throws Refusal where another process has it. */
  readonly demand: () => void;
  readonly release: () => void;
}

/** What systems say that have no second names for a file: exFAT, some tablets, some network disks. */
const NO_LINKS: ReadonlySet<string | null> = new Set([
  ...['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EXDEV'],
]);

/** A lock that is made without links is empty for a moment; one that stays empty is nobody's. */
const BEING_MADE_MS = 5_000;

/**
 * The lock of a data folder, kept in the local state folder: in the data it would travel to other
 * devices, where its process is always "gone". It is stale as soon as its process is. A process of
 * another container or sandbox cannot be seen, and is taken to run.
 * @param now in epoch milliseconds
 */
export function lockFor(
  files: Files,
  stateDir: string,
  dataDir: string,
  device: Device,
  now: () => number,
): Lock {
  let found: string | null = null;
  const key = (): string => {
    found ??= dataKey(files, dataDir);
    return found;
  };
  const lockPath = (): string => join(stateDir, `${key()}.lock`);
  const isGone = (path: string): boolean => {
    const holder = readHolder(files, path);
    if (holder) return !runs(holder, device);
    const about = files.about(path);
    return about === null || Math.abs(now() - about.modified) >= BEING_MADE_MS;
  };
  const isThis = (holder: Holder | null): boolean =>
    holder?.pid === device.pid && runs(holder, device);
  let isHeld = false;
  // Giving the lock back may fail, and leave one behind that names this very process.
  let mayBeLeft = false;

  const grab = (name: string): boolean => {
    const own = `${key()}.${device.random(8)}`;
    const { pid, boot, space } = device;
    const start = device.startOf(pid);
    const text = JSON.stringify({ pid, boot, space, start } satisfies Holder);
    const bytes = new TextEncoder().encode(text);
    writeNewFile(files, stateDir, own, bytes);
    try {
      // Linked, so that nobody ever sees a lock without its holder in it.
      files.link(join(stateDir, own), name);
      return true;
    } catch (error) {
      if (codeOf(error) === 'EEXIST') return false;
      if (!NO_LINKS.has(codeOf(error))) throw error;
      return madeAtOnce(basename(name), bytes);
    } finally {
      quietly(() => files.remove(join(stateDir, own)));
    }
  };

  const madeAtOnce = (name: string, bytes: Uint8Array): boolean => {
    try {
      writeNewFile(files, stateDir, name, bytes);
      return true;
    } catch (error) {
      if (codeOf(error) === 'EEXIST') return false;
      throw error;
    }
  };

  /** Only who holds this second lock may remove a stale one: else two could each take the other's. */
  const takeFromGone = (): boolean => {
    const path = lockPath();
    const guard = `${path}.stale`;
    if (!grab(guard)) {
      // It is only held within this function, so one of this process was left behind.
      if (isGone(guard) || isThis(readHolder(files, guard))) files.remove(guard);
      if (!grab(guard)) return false;
    }
    try {
      if (!isGone(path)) return false;
      if (files.read(path)) files.remove(path);
      return grab(path);
    } finally {
      quietly(() => files.remove(guard));
    }
  };

  const take = (): boolean => {
    isHeld ||= onDisk(`No lock could be made in ${stateDir}`, () => {
      const path = lockPath();
      if (grab(path)) return true;
      const isOwn = mayBeLeft && isThis(readHolder(files, path));
      return isOwn || (isGone(path) && takeFromGone());
    });
    return isHeld;
  };

  return {
    isHeld: () => isHeld,
    take,
    demand: () => {
      if (take()) return;
      const holder = onDisk(`The lock in ${stateDir} could not be read`, () =>
        readHolder(files, lockPath()),
      );
      throw new Refusal({
        what: `Another holdfast is at work on ${dataDir}${holder ? ` (process ${holder.pid})` : ''}.`,
        fix:
          holder && isElsewhere(holder, device)
            ? `It runs in another container or sandbox: go on there, or end it. If it has ended already, delete ${lockPath()}.`
            : 'Go on there, or end it first.',
      });
    },
    release: () => {
      if (!isHeld) return;
      isHeld = false;
      mayBeLeft = true;
      // One left behind is stale when this process has ended.
      quietly(() => {
        files.remove(lockPath());
        mayBeLeft = false;
      });
    },
  };
}

function readHolder(files: Files, path: string): Holder | null {
  const bytes = files.read(path);
  if (!bytes) return null;
  try {
    const holder = JSON.parse(new TextDecoder().decode(bytes));
    return Number.isInteger(holder?.pid) ? holder : null;
  } catch {
    // A power cut can leave an empty file; nobody who runs wrote it.
    return null;
  }
}

const isElsewhere = ({ space }: Holder, device: Device): boolean =>
  space !== undefined && space !== device.space;

function runs(holder: Holder, device: Device): boolean {
  const { pid, boot, start } = holder;
  if (boot !== device.boot) return false;
  if (isElsewhere(holder, device)) return true;
  const now = device.startOf(pid);
  return now !== null && (now === '' || !start || now === start);
}
