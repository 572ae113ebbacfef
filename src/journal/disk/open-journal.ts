import { join } from 'node:path';
import type { Prescription } from '../../progression/prescription.ts';
import { apply } from '../../session/apply.ts';
import type { SessionEvent, SessionFact } from '../../session/events.ts';
import { localDate } from '../../session/results.ts';
import type { SessionState } from '../../session/state.ts';
import { type Problem, Refusal } from '../../text/problem.ts';
import type { Reading } from '../../training/reading.ts';
import { fileOf } from '../lines.ts';
import type { JournalEvent, LooseEvent } from '../records.ts';
import { onDisk } from './disk-trouble.ts';
import { type EventFile, quietly, repairTail, writeNewFile } from './event-file.ts';
import { type FileOnDisk, readName } from './file-names.ts';
import {
  type Journal,
  type JournalDesk,
  type JournalSetting,
  journalDesk,
  type Recordable,
  type SessionToImport,
  type SessionWriter,
} from './journal.ts';

/** Opens the journal of a data folder. The journal is not read, and nothing is made in the data folder, before it is asked for. */
export function openJournal(setting: JournalSetting): Journal {
  const desk = journalDesk(setting);
  const { lock, loaded } = desk;
  const writers: SessionWriter[] = [];
  const keptIn = (session: SessionWriter): SessionWriter => {
    writers.push(session);
    return session;
  };
  return {
    history: loaded.history,
    reload: loaded.forget,
    changedElsewhere: () => {
      try {
        return desk.elsewhere.changed();
      } catch {
        // What is wrong with the folder is told where something is read or saved.
        return false;
      }
    },
    readAnew: loaded.readAnew,
    beginSession: (prescription) => keptIn(beginSession(desk, prescription)),
    resumeSession: (session) => keptIn(resumeSession(desk, session)),
    record: (fact) => recordFact(desk, fact),
    recordOf: (day, facts) => recordOf(desk, day, facts),
    importSession: (session) => importSession(desk, session),
    importEvents: (events) => importEvents(desk, events),
    repair: () => repair(desk),
    lock: lock.take,
    release: () => {
      for (const session of writers.splice(0)) session.close();
      lock.release();
    },
    trySaving: () => trySaving(desk),
    problems: () => loaded.history().unreadable.map(({ problem }) => problem),
  };
}

function trySaving({ place, setting }: JournalDesk): Problem | null {
  const { files, dataDir } = place;
  // A folder that is not there yet is made when something is saved.
  if (!files.about(dataDir)) return null;
  const name = `.try-${setting.device.random(8)}`;
  try {
    onDisk(`Nothing could be saved in ${dataDir}`, () => {
      writeNewFile(files, dataDir, name, new TextEncoder().encode('holdfast doctor\n'));
      files.remove(join(dataDir, name));
    });
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error.problems[0] ?? null;
    throw error;
  }
}

/** Cuts half-written ends off; only files of this device, for those of others may still arrive. */
function repair({ lock, loaded, place, setting }: JournalDesk): string[] {
  const wasHeld = lock.isHeld();
  lock.demand();
  try {
    loaded.forget();
    const torn = loaded.files().filter(({ own, tail }) => own && tail > 0);
    return torn.map(({ path, name, wholeBytes }) => {
      const suffix = setting.device.random(6);
      onDisk(`${path} could not be repaired`, () =>
        repairTail(place.files, path, wholeBytes, suffix),
      );
      return `${name}: the half-written end was cut off, and kept as ${name}.cut-${suffix}.`;
    });
  } finally {
    loaded.forget();
    if (!wasHeld) lock.release();
  }
}

/** Opens a new session in a file of its own. */
function beginSession(desk: JournalDesk, prescription: Prescription): SessionWriter {
  return underLock(desk, () => {
    const { name: device } = desk.setting.device;
    const opening = (id: string): SessionEvent => ({
      type: 'session-opened',
      session: id,
      device,
      prescription,
      id: `${id}:0`,
      ...desk.stamp(),
    });
    let state: SessionState | null = null;
    const file = desk.create((id) => {
      const event = opening(id);
      state = apply(null, event);
      return [event];
    });
    return writer(desk, file, state as unknown as SessionState);
  });
}

/**
 * Goes on with an open session: in its own file where this device wrote to it last, else in a new
 * file that takes it over.
 */
function resumeSession(desk: JournalDesk, session: string): SessionWriter {
  return underLock(desk, () => {
    desk.loaded.forget();
    const open = desk.loaded.history().open.find((each) => each.session === session);
    if (!open) {
      throw new Refusal({
        what: 'This session is not open any more.',
        fix: 'It may have been closed on another device; begin a new one.',
      });
    }
    const { state, own, file: name } = open;
    const last = own ? desk.loaded.files().find((file) => file.name === name) : undefined;
    const reopened = last && desk.reopen(last);
    return reopened ? writer(desk, reopened, state) : writer(desk, ...takeOver(desk, state));
  });
}

/** A new file that goes on with a session, the session, and the event that says so. */
function takeOver(
  desk: JournalDesk,
  state: SessionState,
): [file: EventFile, state: SessionState, taking: readonly JournalEvent[]] {
  const { session, events } = state;
  const taking: LooseEvent[] = [];
  const file = desk.create((id) => {
    taking.push({
      type: 'session-taken-over',
      session,
      after: events.at(-1)?.id ?? '',
      device: desk.setting.device.name,
      id: `${id}:0`,
      ...desk.stamp(),
    });
    return taking;
  });
  return [file, state, taking];
}

/** @param taking how this process took the session over; nothing where it did not have to */
function writer(
  desk: JournalDesk,
  begunIn: EventFile,
  begun: SessionState,
  taking: readonly JournalEvent[] = [],
): SessionWriter {
  let state = begun;
  let file = begunIn;
  let takings = taking;
  let isClosed = false;
  const appended = (facts: readonly SessionFact[], at: Reading) => {
    const events = desk.append(file, facts, at);
    if (events) return events;
    rescue(desk, [...state.events, ...takings]);
    quietly(file.close);
    const [fresh, , more] = takeOver(desk, state);
    file = fresh;
    takings = [...takings, ...more];
    return desk.append(file, facts, at);
  };
  return {
    session: begun.session,
    state: () => state,
    write: (facts, at) => {
      if (facts.length === 0) return state;
      const events = appended(facts, at);
      if (!events) {
        throw new Refusal({
          what: `Nothing was saved in ${desk.setting.dataDir}: its files are being replaced.`,
          fix: 'Let what syncs the folder come to an end, then do it again.',
        });
      }
      state = events.reduce<SessionState>(apply, state);
      return state;
    },
    close: () => {
      if (isClosed) return;
      isClosed = true;
      // What was said to be saved is there when the lifter goes.
      quietly(() => {
        if (!file.isAsLeft()) rescue(desk, [...state.events, ...takings]);
      });
      quietly(file.close);
    },
  };
}

/**
 * Writes what no file holds any more, though it was on disk, into a file of its own: another file
 * took the name of the one it stood in, or the folder is not the one it was.
 */
function rescue(desk: JournalDesk, events: readonly JournalEvent[]): void {
  desk.loaded.forget();
  const held = new Set(
    desk.loaded
      .files()
      .flatMap(({ lines }) => lines)
      .map((line) => (line.kind === 'event' ? line.event.id : null)),
  );
  importEvents(
    desk,
    events.filter(({ id }) => !held.has(id)),
  );
}

/** The session keeps the lock; where it does not come about, the lock is as it was before. */
function underLock(desk: JournalDesk, act: () => SessionWriter): SessionWriter {
  const { lock } = desk;
  const wasHeld = lock.isHeld();
  lock.demand();
  try {
    return act();
  } catch (error) {
    if (!wasHeld) lock.release();
    throw error;
  }
}

/**
 * Writes one fact into this device's file of the month. Where another process is at work, or no lock
 * can be made, it goes into a new file: two processes never write to one.
 */
function recordFact(desk: JournalDesk, fact: Recordable): JournalEvent {
  const at = notBefore(desk, fact);
  const wasHeld = desk.lock.isHeld();
  const isAlone = wasHeld || takenQuietly(desk);
  try {
    const file = isAlone ? monthFile(desk) : null;
    return file ? appended(desk, file, fact, at) : inNewFile(desk, fact, at);
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

/** A file for each day weighed would be thousands after years, and each is looked at at every start. */
function monthFile(desk: JournalDesk): EventFile | null {
  const month = desk.today().slice(0, 7);
  const isOurs = (name: string) => readName(name)?.device === desk.place.device;
  const found = desk
    .reread((name) => name.startsWith(`${month}-`) && isOurs(name))
    .find(isMonthFile);
  return found ? desk.reopen(found) : null;
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
function notBefore(desk: JournalDesk, fact: Recordable): Reading {
  const now = desk.setting.clock.read();
  const of = 'of' in fact ? new Set([fact.of].flat()) : null;
  if (!of) return now;
  const names = (event: JournalEvent): boolean =>
    of.has(event.id) ||
    ('session' in event && of.has(event.session)) ||
    ('of' in event && [event.of].flat().some((each) => of.has(each)));
  const walls = desk.loaded
    .history()
    .events()
    .filter(names)
    .map(({ at }) => at.wall + 1);
  return { ...now, wall: walls.reduce((latest, wall) => Math.max(latest, wall), now.wall) };
}

function appended(desk: JournalDesk, file: EventFile, fact: Recordable, at: Reading): JournalEvent {
  try {
    const [event] = desk.append(file, [fact], at) ?? [];
    return event ? (event as JournalEvent) : inNewFile(desk, fact, at);
  } finally {
    quietly(file.close);
  }
}

function inNewFile(desk: JournalDesk, fact: Recordable, at: Reading): JournalEvent {
  const events: JournalEvent[] = [];
  const file = desk.create((id) => {
    events.push({ ...fact, id: `${id}:0`, ...desk.stamp(at) });
    return events;
  });
  quietly(file.close);
  return events[0] as JournalEvent;
}

function recordOf(
  desk: JournalDesk,
  day: string,
  facts: readonly Recordable[],
): readonly JournalEvent[] {
  const events: JournalEvent[] = [];
  const stamp = desk.stamp();
  const made = desk.create((id) => {
    events.push(...facts.map((fact, index) => ({ ...fact, id: `${id}:${index}`, ...stamp })));
    return events;
  }, day);
  quietly(made.close);
  return events;
}

/** Writes a whole session from elsewhere into a new file of this device. */
function importSession(desk: JournalDesk, { start, end, zone, facts }: SessionToImport): void {
  // A session ends with its last set; when those before it were is not known.
  const lastSet = facts.findLastIndex(({ type }) => type === 'set-done');
  const at = (index: number) => {
    const isEnd = end !== null && lastSet >= 0 && index >= lastSet;
    return { wall: isEnd ? Math.max(start, end) : start, up: null, boot: null };
  };
  const device = desk.setting.device.name;
  const file = desk.create(
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
function importEvents(desk: JournalDesk, events: readonly JournalEvent[]): void {
  if (events.length === 0) return;
  const [first] = events;
  const day = first ? localDate(first.at.wall, first.zone).toString() : undefined;
  quietly(desk.create(() => events, day).close);
}
