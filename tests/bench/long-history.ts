import { mkdtempSync, readdirSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Temporal } from 'temporal-polyfill';
import { nodeDevice } from '../../src/journal/disk/device.ts';
import { nodeFiles } from '../../src/journal/disk/files.ts';
import { openJournal } from '../../src/journal/disk/open-journal.ts';
import type { JournalEvent } from '../../src/journal/records.ts';
import type { RehearsedHistory } from '../../src/rehearsal/rehearsed-history.ts';

/** Seven in the morning in UTC. */
const wallOn = (date: Temporal.PlainDate, hour = 7): number =>
  date.toZonedDateTime({ timeZone: 'UTC', plainTime: { hour } }).epochMilliseconds;

/**
 * Writes the last `sessions` of a rehearsed history into a data folder as years of use leave it: a
 * file a session in the folder of its month, and one for the weigh-ins of each month.
 */
export function writeLongHistory(
  history: RehearsedHistory,
  sessions: number,
  machine: string,
): { readonly folder: string; readonly data: string } {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-bench-'));
  const data = join(folder, 'data');
  let wall = 0;
  const journal = openJournal({
    dataDir: data,
    stateDir: join(folder, 'state'),
    configDir: join(folder, 'config'),
    files: { ...nodeFiles, sync: () => {}, syncFolder: () => {} },
    clock: { read: () => ({ wall, up: null, boot: null }), zone: () => 0 },
    device: nodeDevice(machine),
  });
  const kept = history.sessions.slice(-sessions);
  for (const events of kept) {
    wall = events.at(-1)?.at.wall ?? 0;
    const [opened] = events;
    const session = opened?.type === 'session-opened' ? opened.session : '';
    journal.importEvents(events.map((event, index) => ({ ...event, id: `${session}:${index}` })));
  }
  const first = kept[0]?.[0]?.at.wall ?? 0;
  const months = new Map<string, JournalEvent[]>();
  for (const { date, mass } of history.weighIns) {
    wall = wallOn(date);
    if (wall < first) continue;
    const month = date.toString().slice(0, 7);
    const of = months.get(month) ?? [];
    months.set(month, of);
    of.push({
      type: 'weighed',
      mass,
      on: date.toString(),
      id: `weighed-${month}:${of.length}`,
      at: { wall, up: null, boot: null },
      zone: 0,
    });
  }
  for (const of of months.values()) {
    wall = of.at(-1)?.at.wall ?? 0;
    journal.importEvents(of);
  }
  age(data);
  return { folder, data };
}

/** As if written an hour ago: no index is made of files that may still be on their way. */
export function age(folder: string): void {
  const then = Date.now() / 1000 - 3600;
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    utimesSync(join(entry.parentPath, entry.name), then, then);
  }
}
