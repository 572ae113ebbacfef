import { join } from 'node:path';
import { type Problem, Refusal } from '../../text/problem.ts';
import { onDisk } from './disk-trouble.ts';
import { repairTail, writeNewFile } from './event-file.ts';
import type { Journal, JournalSetting, SessionWriter } from './journal.ts';
import { type JournalFolder, journalFolder } from './journal-folder.ts';
import { importEvents, importSession, recordFact, recordOf } from './write-facts.ts';
import { beginSession, resumeSession } from './write-session.ts';

/** Opens the journal of a data folder. The journal is not read, and nothing is made in the data folder, before it is asked for. */
export function openJournal(setting: JournalSetting): Journal {
  const folder = journalFolder(setting);
  const { lock, loaded } = folder;
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
        return folder.elsewhere.changed();
      } catch {
        // What is wrong with the folder is told where something is read or saved.
        return false;
      }
    },
    readAnew: loaded.readAnew,
    beginSession: (prescription) => keptIn(beginSession(folder, prescription)),
    resumeSession: (session) => keptIn(resumeSession(folder, session)),
    record: (fact) => recordFact(folder, fact),
    recordOf: (day, facts) => recordOf(folder, day, facts),
    importSession: (session) => importSession(folder, session),
    importEvents: (events) => importEvents(folder, events),
    repair: () => repair(folder),
    lock: lock.take,
    release: () => {
      for (const session of writers.splice(0)) session.close();
      lock.release();
    },
    trySaving: () => trySaving(folder),
    problems: () => loaded.history().unreadable.map(({ problem }) => problem),
  };
}

function trySaving({ place, setting }: JournalFolder): Problem | null {
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
function repair({ lock, loaded, place, setting }: JournalFolder): string[] {
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
