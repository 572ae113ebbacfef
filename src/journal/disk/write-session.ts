import type { Prescription } from '../../progression/prescription.ts';
import { apply } from '../../session/apply.ts';
import type { SessionEvent } from '../../session/events.ts';
import type { SessionState } from '../../session/state.ts';
import { Refusal } from '../../text/problem.ts';
import type { LooseEvent } from '../records.ts';
import { quietly } from './append-file.ts';
import type { EventFile } from './event-file.ts';
import type { SessionWriter } from './journal.ts';
import type { JournalDesk } from './journal-desk.ts';

/** Opens a new session in a file of its own. */
export function beginSession(desk: JournalDesk, prescription: Prescription): SessionWriter {
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
export function resumeSession(desk: JournalDesk, session: string): SessionWriter {
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
    const file = (last && desk.reopen(last)) ?? takeOver(desk, state);
    return writer(desk, file, state);
  });
}

function takeOver(desk: JournalDesk, { session, events }: SessionState): EventFile {
  return desk.create((id) => {
    const taking: LooseEvent = {
      type: 'session-taken-over',
      session,
      after: events.at(-1)?.id ?? '',
      device: desk.setting.device.name,
      id: `${id}:0`,
      ...desk.stamp(),
    };
    return [taking];
  });
}

function writer(desk: JournalDesk, file: EventFile, begun: SessionState): SessionWriter {
  let state = begun;
  return {
    session: begun.session,
    state: () => state,
    write: (facts, at) => {
      if (facts.length === 0) return state;
      state = desk.append(file, facts, at).reduce<SessionState>(apply, state);
      return state;
    },
    // Everything written is on disk already.
    close: () => quietly(file.close),
  };
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
