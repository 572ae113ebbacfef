import { createHash, randomBytes } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { codeOf } from '../../text/disk-words.ts';
import type { Files } from './files.ts';

/** This machine and this process, as far as files must be told apart by them. */
export interface Device {
  /** What the lifter calls the machine: the host name. */
  readonly name: string;
  /** The machine's own id, which a restored backup does not bring along; null where there is none. */
  readonly machine: string | null;
  /** Names the machine's present run; null where it is not known. */
  readonly boot: string | null;
  /** Which processes it sees: a container or a sandbox has numbers of its own. Null where it is not known. */
  readonly space: string | null;
  readonly pid: number;
  /** When a process started, in a unit of the platform's own; null where it does not run, '' where it runs and no more is known. */
  readonly startOf: (pid: number) => string | null;
  /** A fresh random name of so many letters and digits. */
  readonly random: (length: number) => string;
}

const LETTERS = '0123456789abcdefghijkmnpqrstuvwxyz';

/** The real machine. Linux tells most; elsewhere a lock only asks whether the process runs. */
export function nodeDevice(name: string): Device {
  return {
    name,
    machine: firstOf('/etc/machine-id', '/var/lib/dbus/machine-id') ?? name,
    boot: firstOf('/proc/sys/kernel/random/boot_id'),
    space: pidSpace(),
    pid: process.pid,
    startOf,
    random: (length) =>
      Array.from(randomBytes(length), (byte) => LETTERS[byte % LETTERS.length]).join(''),
  };
}

function pidSpace(): string | null {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return null;
  }
}

function startOf(pid: number): string | null {
  const stat = firstOf(`/proc/${pid}/stat`);
  // The second field is the program's name in brackets and may hold blanks; the start is the 22nd.
  if (stat) return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  try {
    process.kill(pid, 0);
    return '';
  } catch (error) {
    // EPERM: it runs and belongs to somebody else.
    return codeOf(error) === 'EPERM' ? '' : null;
  }
}

function firstOf(...paths: readonly string[]): string | null {
  for (const path of paths) {
    try {
      const text = readFileSync(path, 'utf8').trim();
      if (text !== '') return text;
    } catch {
      // Not every platform has it; the next one, or none, serves.
    }
  }
  return null;
}

/** Names a data folder among the files of this machine: the same by whatever path it is reached. */
export const dataKey = (files: Files, dataDir: string): string =>
  createHash('sha256').update(files.realPath(dataDir)).digest('hex').slice(0, 16);
