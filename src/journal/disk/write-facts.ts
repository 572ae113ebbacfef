import { localDate } from '../../session/results.ts';
import type { Reading } from '../../training/reading.ts';
import { fileOf } from '../lines.ts';
import type { JournalEvent } from '../records.ts';
import { type EventFile, quietly } from './event-file.ts';
import { type FileOnDisk, readName } from './file-names.ts';
import type { Recordable, SessionToImport } from './journal.ts';
import type { JournalFolder } from './journal-folder.ts';

/**
 * Writes one fact into this device's file of the month. Where another process is at work, or no lock
 * can be made, it goes into a new file: two processes never write to one.
 */
export function recordFact(folder: JournalFolder, fact: Recordable): JournalEvent {
  const at = notBefore(folder, fact);
  const wasHeld = folder.lock.isHeld();
  const isAlone = wasHeld || takenQuietly(folder);
  try {
    const file = isAlone ? monthFile(folder) : null;
    return file ? appended(folder, file, fact, at) : inNewFile(folder, fact, at);
  } finally {
    if (isAlone && !wasHeld) folder.lock.release();
  }
}

function takenQuietly({ lock }: JournalFolder): boolean {
  let isTaken = false;
  quietly(() => {
    isTaken = lock.take();
  });
  return isTaken;
}

/** A file for each day weighed would be thousands after years, and each is looked at at every start. */
function monthFile(folder: JournalFolder): EventFile | null {
  const month = folder.today().slice(0, 7);
  const isOurs = (name: string) => readName(name)?.device === folder.place.device;
  const found = folder
    .reread((name) => name.startsWith(`${month}-`) && isOurs(name))
    .find(isMonthFile);
  return found ? folder.reopen(found) : null;
}

/** Neither a session's file nor one that was imported, whose events carry other ids than its name. */
function isMonthFile({ name, lines: [first] }: FileOnDisk): boolean {
  if (first?.kind !== 'event') return false;
  const { type, id } = first.event;
  const isSession = type === 'session-opened' || type === 'session-taken-over';
  return !isSession && readName(name)?.id === fileOf(id);
}

/**
 * Now, but never before what the fact changes, nor before what changed that last: on a clock that
 * was set back since, or runs behind another device's, the change would come first and do nothing.
 */
function notBefore(folder: JournalFolder, fact: Recordable): Reading {
  const now = folder.setting.clock.read();
  const of = 'of' in fact ? new Set([fact.of].flat()) : null;
  if (!of) return now;
  const names = (event: JournalEvent): boolean =>
    of.has(event.id) ||
    ('session' in event && of.has(event.session)) ||
    ('of' in event && [event.of].flat().some((each) => of.has(each)));
  const walls = folder.loaded
    .history()
    .events()
    .filter(names)
    .map(({ at }) => at.wall + 1);
  return { ...now, wall: walls.reduce((latest, wall) => Math.max(latest, wall), now.wall) };
}

function appended(
  folder: JournalFolder,
  file: EventFile,
  fact: Recordable,
  at: Reading,
): JournalEvent {
  try {
    const [event] = folder.append(file, [fact], at) ?? [];
    return event ? (event as JournalEvent) : inNewFile(folder, fact, at);
  } finally {
    quietly(file.close);
  }
}

function inNewFile(folder: JournalFolder, fact: Recordable, at: Reading): JournalEvent {
  const events: JournalEvent[] = [];
  const file = folder.create((id) => {
    events.push({ ...fact, id: `${id}:0`, ...folder.stamp(at) });
    return events;
  });
  quietly(file.close);
  return events[0] as JournalEvent;
}

export function recordOf(
  folder: JournalFolder,
  day: string,
  facts: readonly Recordable[],
): readonly JournalEvent[] {
  const events: JournalEvent[] = [];
  const stamp = folder.stamp();
  const made = folder.create((id) => {
    events.push(...facts.map((fact, index) => ({ ...fact, id: `${id}:${index}`, ...stamp })));
    return events;
  }, day);
  quietly(made.close);
  return events;
}

/** Writes a whole session from elsewhere into a new file of this device. */
export function importSession(
  folder: JournalFolder,
  { start, end, zone, facts }: SessionToImport,
): void {
  // A session ends with its last set; when those before it were is not known.
  const lastSet = facts.findLastIndex(({ type }) => type === 'set-done');
  const at = (index: number) => {
    const isEnd = end !== null && lastSet >= 0 && index >= lastSet;
    return { wall: isEnd ? Math.max(start, end) : start, up: null, boot: null };
  };
  const device = folder.setting.device.name;
  const file = folder.create(
    (id) =>
      facts.map((fact, index) => ({
        ...(fact.type === 'session-opened' ? { ...fact, device } : fact),
        id: `${id}:${index}`,
        at: at(index),
        zone,
      })),
    localDate(start, zone).toString(),
  );
  quietly(file.close);
}

/** Writes events under the ids they had elsewhere into a new file, which is never written to again. */
export function importEvents(folder: JournalFolder, events: readonly JournalEvent[]): void {
  if (events.length === 0) return;
  const [first] = events;
  const day = first ? localDate(first.at.wall, first.zone).toString() : undefined;
  quietly(folder.create(() => events, day).close);
}
