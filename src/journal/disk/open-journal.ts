import { onDisk } from './disk-trouble.ts';
import { importEvents, importSession } from './import-into.ts';
import type { Journal, JournalSetting } from './journal.ts';
import { type JournalDesk, journalDesk } from './journal-desk.ts';
import { recordFact } from './record-fact.ts';
import { repairTail } from './repair-tail.ts';
import { beginSession, resumeSession } from './write-session.ts';

/** Opens the journal of a data folder. The journal is not read, and nothing is made in the data folder, before it is asked for. */
export function openJournal(setting: JournalSetting): Journal {
  const desk = journalDesk(setting);
  const { lock, loaded } = desk;
  return {
    history: loaded.history,
    reload: loaded.forget,
    readAnew: loaded.readAnew,
    beginSession: (prescription) => beginSession(desk, prescription),
    resumeSession: (session) => resumeSession(desk, session),
    record: (fact) => recordFact(desk, fact),
    importSession: (session) => importSession(desk, session),
    importEvents: (events) => importEvents(desk, events),
    repair: () => repair(desk),
    lock: lock.take,
    release: lock.release,
    problems: () => loaded.history().unreadable.map(({ problem }) => problem),
  };
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
