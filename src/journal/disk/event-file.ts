import { dirname, join } from 'node:path';
import { encodeLine } from '../line-codec.ts';
import type { JournalEvent } from '../records.ts';
import { type AppendFile, createFile, reopenFile } from './append-file.ts';
import { crc32 } from './crc32.ts';
import { pathOf, readName } from './file-names.ts';
import type { Files } from './files.ts';
import type { FileOnDisk } from './read-journal.ts';
import { repairTail } from './repair-tail.ts';

/** A journal file of this device that is being written to. */
export interface EventFile {
  readonly path: string;
  /** Path below the data folder. */
  readonly name: string;
  /** Ids for the next events, in order; taken only once these are written. */
  readonly nextIds: (count: number) => readonly string[];
  /** Returns once the events are on disk, all at once; throws what the disk says. */
  readonly append: (events: readonly JournalEvent[]) => void;
  readonly close: () => void;
}

/** Makes a new file with its first events, whose ids carry the name's id. */
export function newEventFile(
  files: Files,
  dataDir: string,
  name: { readonly day: string; readonly device: string; readonly id: string },
  first: readonly JournalEvent[],
): EventFile {
  const below = pathOf(name);
  const file = createFile(files, join(dataDir, below), linesOf(first), dirname(dataDir));
  return eventFile(file, below, name.id, first.length);
}

/**
 * Goes on with a file of this device, as it was just read; a half-written end is cut off and kept
 * beside it. Null where the file was copied or imported.
 */
export function oldEventFile(
  files: Files,
  dataDir: string,
  found: FileOnDisk,
  cutSuffix: string,
): EventFile | null {
  const name = readName(found.path);
  const last = found.lines.at(-1);
  const id = last?.kind === 'event' ? last.event.id : last?.kind === 'newer' ? last.id : null;
  // A file under a name that its events do not carry was copied or imported: its numbers are not ours.
  if (!name || !id?.startsWith(`${name.id}:`)) return null;
  if (found.tail > 0) repairTail(files, found.path, found.wholeBytes, cutSuffix);
  const next = Number(id.slice(name.id.length + 1)) + 1;
  return eventFile(
    reopenFile(files, found.path, found.wholeBytes, dirname(dataDir)),
    found.name,
    name.id,
    next,
  );
}

function eventFile(file: AppendFile, name: string, id: string, start: number): EventFile {
  let next = start;
  return {
    path: file.path,
    name,
    nextIds: (count) => Array.from({ length: count }, (_, at) => `${id}:${next + at}`),
    append: (events) => {
      file.append(linesOf(events));
      next += events.length;
    },
    close: file.close,
  };
}

function linesOf(events: readonly JournalEvent[]): Uint8Array {
  const lines = events.map((event) => encodeLine(event, crc32));
  const bytes = new Uint8Array(lines.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const line of lines) {
    bytes.set(line, at);
    at += line.length;
  }
  return bytes;
}
