import type { JournalEvent } from '../records.ts';
import { quietly } from './append-file.ts';
import type { SessionToImport } from './journal.ts';
import type { JournalDesk } from './journal-desk.ts';

/** Writes a whole session from elsewhere into a new file of this device. */
export function importSession(desk: JournalDesk, { start, zone, facts }: SessionToImport): void {
  const at = { wall: start, up: null, boot: null };
  const device = desk.setting.device.name;
  const file = desk.create((id) =>
    facts.map((fact, index) => ({
      ...(fact.type === 'session-opened' ? { ...fact, device } : fact),
      id: `${id}:${index}`,
      at,
      zone,
    })),
  );
  quietly(file.close);
}

/** Writes events under the ids they had elsewhere into a new file, which is never written to again. */
export function importEvents(desk: JournalDesk, events: readonly JournalEvent[]): void {
  if (events.length === 0) return;
  quietly(desk.create(() => events).close);
}
