import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { quietly, writeNewFile } from './append-file.ts';
import type { Device } from './device.ts';
import type { Files } from './files.ts';

const FILE = 'device.json';
const LENGTH = 6;

/**
 * This device's id, kept in the settings folder, never with the data. It is renewed when the
 * machine is another one (a restored or synced settings folder), for two devices must not share
 * one. Where it cannot be kept it holds for this run alone.
 */
export function deviceId(files: Files, configDir: string, device: Device): string {
  const machine = fingerprint(device);
  const kept = readKept(files, join(configDir, FILE));
  if (kept && kept.machine === machine) return kept.id;
  const id = device.random(LENGTH);
  quietly(() => keep(files, configDir, device, JSON.stringify({ id, machine })));
  return id;
}

function readKept(files: Files, path: string): { id: string; machine: string } | null {
  try {
    const bytes = files.read(path);
    const kept = bytes && JSON.parse(new TextDecoder().decode(bytes));
    const isWhole = /^[0-9a-z]+$/.test(kept?.id) && typeof kept?.machine === 'string';
    return isWhole ? { id: kept.id, machine: kept.machine } : null;
  } catch {
    // Unreadable or damaged: a new id is always safe, for files are told apart by ids of their own.
    return null;
  }
}

function keep(files: Files, configDir: string, device: Device, text: string): void {
  const name = `${FILE}.${device.random(LENGTH)}`;
  writeNewFile(files, configDir, name, new TextEncoder().encode(text));
  files.rename(join(configDir, name), join(configDir, FILE));
}

/** The machine's own id is not written down as it is: other programs know people by it. */
const fingerprint = ({ machine }: Device): string =>
  createHash('sha256').update(`holdfast ${machine}`).digest('hex').slice(0, 16);
