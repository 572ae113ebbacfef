import { fileOf } from '../line-codec.ts';
import type { JournalEvent } from '../records.ts';
import { quietly } from './append-file.ts';
import type { EventFile } from './event-file.ts';
import { readName } from './file-names.ts';
import type { Recordable } from './journal.ts';
import type { JournalDesk } from './journal-desk.ts';
import type { FileOnDisk } from './read-journal.ts';

/**
 * Writes one fact into this device's file of the day. Where another process is at work, or no lock
 * can be made, it goes into a new file: two processes never write to one.
 */
export function recordFact(desk: JournalDesk, fact: Recordable): JournalEvent {
  const wasHeld = desk.lock.isHeld();
  const isAlone = wasHeld || takenQuietly(desk);
  try {
    const file = isAlone ? dayFile(desk) : null;
    return file ? appended(desk, file, fact) : inNewFile(desk, fact);
  } finally {
    if (isAlone && !wasHeld) desk.lock.release();
  }
}

function takenQuietly({ lock }: JournalDesk): boolean {
  let isTaken = false;
  quietly(() => {
    isTaken = lock.take();
  });
  return isTaken;
}

function dayFile(desk: JournalDesk): EventFile | null {
  const start = `${desk.today()}-${desk.place.device}-`;
  const found = desk.reread((name) => name.startsWith(start)).find(isDayFile);
  return found ? desk.reopen(found) : null;
}

/** Neither a session's file nor one that was imported, whose events carry other ids than its name. */
function isDayFile({ name, lines: [first] }: FileOnDisk): boolean {
  if (first?.kind !== 'event') return false;
  const { type, id } = first.event;
  const isSession = type === 'session-opened' || type === 'session-taken-over';
  return !isSession && readName(name)?.id === fileOf(id);
}

function appended(desk: JournalDesk, file: EventFile, fact: Recordable): JournalEvent {
  try {
    const [event] = desk.append(file, [fact]);
    return event as JournalEvent;
  } finally {
    quietly(file.close);
  }
}

function inNewFile(desk: JournalDesk, fact: Recordable): JournalEvent {
  const events: JournalEvent[] = [];
  const file = desk.create((id) => {
    events.push({ ...fact, id: `${id}:0`, ...desk.stamp() });
    return events;
  });
  quietly(file.close);
  return events[0] as JournalEvent;
}
