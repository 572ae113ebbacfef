import { join } from 'node:path';
import { decodeFile } from '../decode-file.ts';
import type { JournalFile } from '../journal-file.ts';
import { crc32 } from './crc32.ts';
import { onDisk } from './disk-trouble.ts';
import { JOURNAL_FOLDER, readName } from './file-names.ts';
import type { Files } from './files.ts';

/** A file of another device that was written to so short ago may still be on its way here. */
export const ARRIVING_MS = 60_000;

/** A journal file with what is needed to go on writing to it. */
export interface FileOnDisk extends JournalFile {
  readonly path: string;
  /** Bytes up to the end of the last whole line. */
  readonly wholeBytes: number;
}

export interface JournalPlace {
  readonly files: Files;
  readonly dataDir: string;
  /** This device's id. */
  readonly device: string;
}

/**
 * Reads the journal files below a data folder.
 * @param wall now, in epoch milliseconds
 * @param wanted tells by its name and folder which file to read; all of them by default
 */
export function readJournal(
  place: JournalPlace,
  wall: number,
  wanted: (name: string, month: string) => boolean = () => true,
): FileOnDisk[] {
  const { files, dataDir } = place;
  const journal = join(dataDir, JOURNAL_FOLDER);
  const filesOf = (month: string): (FileOnDisk | null)[] =>
    files
      .list(join(journal, month))
      .filter(({ name, isFolder }) => !isFolder && name.endsWith('.jsonl') && wanted(name, month))
      .map(({ name }) => readFile(place, join(JOURNAL_FOLDER, month, name), wall));
  return onDisk(`The journal in ${journal} could not be read`, () =>
    files
      .list(journal)
      .filter(({ isFolder }) => isFolder)
      .flatMap(({ name }) => filesOf(name))
      .filter((file) => file !== null),
  );
}

function readFile(
  { files, dataDir, device }: JournalPlace,
  name: string,
  wall: number,
): FileOnDisk | null {
  const path = join(dataDir, name);
  const bytes = files.read(path);
  if (!bytes) return null;
  const { lines, wholeBytes, tail } = decodeFile(bytes, crc32);
  const own = readName(name)?.device === device;
  const isArriving = !own && tail > 0 && wall - (files.about(path)?.modified ?? 0) < ARRIVING_MS;
  return { path, name, own, lines, wholeBytes, tail: isArriving ? 0 : tail };
}
