import type { Prescription } from '../../progression/prescription.ts';
import { apply } from '../../session/apply.ts';
import type { SessionEvent, SessionFact } from '../../session/events.ts';
import type { SessionState } from '../../session/state.ts';
import { Refusal } from '../../text/problem.ts';
import type { Reading } from '../../training/reading.ts';
import type { JournalEvent, LooseEvent } from '../records.ts';
import { type EventFile, quietly } from './event-file.ts';
import type { SessionWriter } from './journal.ts';
import type { JournalFolder } from './journal-folder.ts';

import { importEvents } from './write-facts.ts';

/** Opens a new session in a file of its own. */
export function beginSession(folder: JournalFolder, prescription: Prescription): SessionWriter {
  return underLock(folder, () => {
    const { name: device } = folder.setting.device;
    const opening = (id: string): SessionEvent => ({
      type: 'session-opened',
      session: id,
      device,
      prescription,
      id: `${id}:0`,
      ...folder.stamp(),
    });
    let state: SessionState | null = null;
    const file = folder.create((id) => {
      const event = opening(id);
      state = apply(null, event);
      return [event];
    });
    return writer(folder, file, state as unknown as SessionState);
  });
}

/**
 * Goes on with an open session: in its own file where this device wrote to it last, else in a new
 * file that takes it over.
 */
export function resumeSession(folder: JournalFolder, session: string): SessionWriter {
  return underLock(folder, () => {
    folder.loaded.forget();
    const open = folder.loaded.history().open.find((each) => each.session === session);
    if (!open) {
      throw new Refusal({
        what: 'This session is not open any more.',
        fix: 'It may have been closed on another device; begin a new one.',
      });
    }
    const { state, own, file: name } = open;
    const last = own ? folder.loaded.files().find((file) => file.name === name) : undefined;
    const reopened = last && folder.reopen(last);
    return reopened ? writer(folder, reopened, state) : writer(folder, ...takeOver(folder, state));
  });
}

/** A new file that goes on with a session, the session, and the event that says so. */
function takeOver(
  folder: JournalFolder,
  state: SessionState,
): [file: EventFile, state: SessionState, taking: readonly JournalEvent[]] {
  const { session, events } = state;
  const taking: LooseEvent[] = [];
  const file = folder.create((id) => {
    taking.push({
      type: 'session-taken-over',
      session,
      after: events.at(-1)?.id ?? '',
      device: folder.setting.device.name,
      id: `${id}:0`,
      ...folder.stamp(),
    });
    return taking;
  });
  return [file, state, taking];
}

/** @param taking how this process took the session over; nothing where it did not have to */
function writer(
  folder: JournalFolder,
  begunIn: EventFile,
  begun: SessionState,
  taking: readonly JournalEvent[] = [],
): SessionWriter {
  let state = begun;
  let file = begunIn;
  let takings = taking;
  let isClosed = false;
  const appended = (facts: readonly SessionFact[], at: Reading) => {
    const events = folder.append(file, facts, at);
    if (events) return events;
    rescue(folder, [...state.events, ...takings]);
    quietly(file.close);
    const [fresh, , more] = takeOver(folder, state);
    file = fresh;
    takings = [...takings, ...more];
    return folder.append(file, facts, at);
  };
  return {
    session: begun.session,
    state: () => state,
    write: (facts, at) => {
      if (facts.length === 0) return state;
      const events = appended(facts, at);
      if (!events) {
        throw new Refusal({
          what: `Nothing was saved in ${folder.setting.dataDir}: its files are being replaced.`,
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
        if (!file.isAsLeft()) rescue(folder, [...state.events, ...takings]);
      });
      quietly(file.close);
    },
  };
}

/**
 * Writes what no file holds any more, though it was on disk, into a file of its own: another file
 * took the name of the one it stood in, or the folder is not the one it was.
 */
function rescue(folder: JournalFolder, events: readonly JournalEvent[]): void {
  folder.loaded.forget();
  const held = new Set(
    folder.loaded
      .files()
      .flatMap(({ lines }) => lines)
      .map((line) => (line.kind === 'event' ? line.event.id : null)),
  );
  importEvents(
    folder,
    events.filter(({ id }) => !held.has(id)),
  );
}

/** The session keeps the lock; where it does not come about, the lock is as it was before. */
function underLock(folder: JournalFolder, act: () => SessionWriter): SessionWriter {
  const { lock } = folder;
  const wasHeld = lock.isHeld();
  lock.demand();
  try {
    return act();
  } catch (error) {
    if (!wasHeld) lock.release();
    throw error;
  }
}
