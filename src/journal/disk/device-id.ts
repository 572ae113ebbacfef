import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { Device } from './device.ts';
import { quietly, writeNewFile } from './event-file.ts';
import type { Files } from './files.ts';

const FILE = 'device.json';
const LENGTH = 6;

/**
 * This device's id, kept in the settings folder, never with the data. It is renewed when the
 * machine is another one (a restored or synced settings folder), for two devices must not share
 * one. Where it cannot be kept it holds for this run alone.
 */
export function deviceId(files: Files, configDir: string, device: Device): string {
  const fresh = device.random(LENGTH);
  const machine = fingerprint(device);
  let id = fresh;
  // Where the folder cannot be read or written, the fresh id serves: it is always safe, for files
  // are told apart by ids of their own.
  quietly(() => {
    const kept = parsed(files.read(join(configDir, FILE)));
    if (kept?.machine === machine) id = kept.id;
    else keep(files, configDir, device, JSON.stringify({ id, machine }));
  });
  return id;
}

/** What was kept; null where nothing was, or it is damaged. */
function parsed(bytes: Uint8Array | null): { id: string; machine: string } | null {
  try {
    const kept = bytes && JSON.parse(new TextDecoder().decode(bytes));
    const isWhole = /^[0-9a-z]+$/.test(kept?.id) && typeof kept?.machine === 'string';
    return isWhole ? { id: kept.id, machine: kept.machine } : null;
  } catch {
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
