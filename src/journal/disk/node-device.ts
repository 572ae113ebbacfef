import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Device } from './device.ts';
import { codeOf } from './disk-trouble.ts';

const LETTERS = '0123456789abcdefghijkmnpqrstuvwxyz';

/** The real machine. Linux tells most; elsewhere a lock only asks whether the process runs. */
export function nodeDevice(name: string): Device {
  return {
    name,
    machine: firstOf('/etc/machine-id', '/var/lib/dbus/machine-id') ?? name,
    boot: firstOf('/proc/sys/kernel/random/boot_id'),
    pid: process.pid,
    startOf,
    random: (length) =>
      Array.from(randomBytes(length), (byte) => LETTERS[byte % LETTERS.length]).join(''),
  };
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
