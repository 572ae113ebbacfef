import { createHash } from 'node:crypto';
import { join, sep } from 'node:path';
import { type Problem, Refusal } from '../../text/problem.ts';
import { type SettledPast, settledPast } from '../fold-history.ts';
import { decodeFile } from '../lines.ts';
import { crc32 } from './crc32.ts';
import { onDisk } from './disk-trouble.ts';
import { type FileOnDisk, JOURNAL_FOLDER, monthOf, readName } from './file-names.ts';
import type { Files, FolderEntry } from './files.ts';
import type { JournalIndex } from './journal-index.ts';

/**
 * A file that was written to so short ago may be written to again without another size or time, or,
 * of another device, still be on its way here.
 */
export const ARRIVING_MS = 60_000;

/** Was it written to just now? A file of a clock that was ahead is no news. */
const isNews = (modified: number, wall: number): boolean => Math.abs(wall - modified) < ARRIVING_MS;

export interface JournalPlace {
  readonly files: Files;
  readonly dataDir: string;
  /** This device's id. */
  readonly device: string;
}

/**
 * Reads the journal files below a data folder.
 * @param wall now, in epoch milliseconds
 * @param wanted which of them to read, by the folder of their month and by name; by default all. A folder
 *   that is not wanted is not listed.
 */
export function readJournal(
  place: JournalPlace,
  wall: number,
  wanted: {
    readonly month?: (month: string) => boolean;
    readonly name?: (name: string) => boolean;
  } = {},
): FileOnDisk[] {
  const { files, dataDir } = place;
  const { month: isWantedMonth = () => true, name: isWanted = () => true } = wanted;
  const journal = join(dataDir, JOURNAL_FOLDER);
  /** What cannot be read is told by its name, and the rest is read. */
  const orTrouble = (name: string, act: () => readonly FileOnDisk[]): readonly FileOnDisk[] => {
    try {
      return onDisk(`${name} could not be read`, act);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const [trouble = { what: error.message }] = error.problems;
      const path = join(dataDir, name);
      return [{ path, name, own: false, lines: [], wholeBytes: 0, tail: 0, trouble }];
    }
  };
  const filesOf = (month: string): readonly FileOnDisk[] =>
    files
      .list(join(journal, month))
      .filter(({ name }) => name.endsWith('.jsonl') && isWanted(name))
      .flatMap((entry) => {
        const name = join(JOURNAL_FOLDER, month, entry.name);
        return orTrouble(name, () => readFile(place, name, entry.kind, wall));
      });
  return onDisk(`The journal in ${journal} could not be read`, () => files.list(journal))
    .filter(({ name, kind }) => kind === 'folder' && isWantedMonth(name))
    .flatMap(({ name }) => orTrouble(join(JOURNAL_FOLDER, name), () => filesOf(name)));
}

function readFile(
  { files, dataDir, device }: JournalPlace,
  name: string,
  kind: FolderEntry['kind'],
  wall: number,
): readonly FileOnDisk[] {
  const path = join(dataDir, name);
  const bytes = files.read(path);
  if (!bytes && kind === 'other') {
    throw new Refusal({ what: `${name} leads to nothing.`, fix: 'Delete the link.' });
  }
  // It was removed since the folder was listed.
  if (!bytes) return [];
  const { lines, wholeBytes, tail } = decodeFile(bytes, crc32);
  const own = readName(name)?.device === device;
  const isArriving = !own && tail > 0 && isNews(files.about(path)?.modified ?? 0, wall);
  if (wholeBytes === 0 && !isArriving) {
    // Cutting its end off would leave nothing.
    const trouble = withoutLines(name, bytes.length);
    return [{ path, name, own, lines, wholeBytes, tail: 0, trouble }];
  }
  return [{ path, name, own, lines, wholeBytes, tail: isArriving ? 0 : tail }];
}

const withoutLines = (name: string, bytes: number): Problem => ({
  what: `${name} holds no whole line any more: ${bytes} bytes are kept as they are.`,
  why: 'The disk or another program wrote over it, or the power went when it was made.',
  fix: 'Bring the file back from a backup; where nothing was saved in it, delete it.',
});

/** What old files came to, and the files since. */
export interface Recent {
  readonly past: SettledPast;
  readonly files: readonly FileOnDisk[];
  readonly isOld: (month: string) => boolean;
}

/** Reads the journal of a data folder, whole or with the help of its index. */
export interface JournalReader {
  /** Every file; makes an index for the next start where {@link recent} found none that fits. */
  readonly all: () => readonly FileOnDisk[];
  /** Every file, whatever the index says, which is then made anew. */
  readonly anew: () => readonly FileOnDisk[];
  /** Null where no index fits. */
  readonly recent: () => Recent | null;
}

export interface ReaderClock {
  /** Now, in epoch milliseconds. */
  readonly wall: () => number;
  /** The local day now. */
  readonly today: () => string;
}

export function journalReader(
  place: JournalPlace,
  { wall, today }: ReaderClock,
  index: JournalIndex | null,
): JournalReader {
  let missing: OldFiles | null = null;
  const keep = ({ key, isOld }: OldFiles, files: readonly FileOnDisk[]): void => {
    if (!index || key === null) return;
    const old = files.filter(({ name }) => isOld(monthOf(name)));
    // What could not be read now may be readable the next time, and look the same from outside.
    if (old.some(({ trouble }) => trouble)) return;
    const past = settledPast(old);
    if (past.sessions.length > 0) index.write(key, past);
  };
  const all = (): readonly FileOnDisk[] => {
    const files = readJournal(place, wall());
    if (missing) keep(missing, files);
    missing = null;
    return files;
  };
  return {
    all,
    anew: () => {
      missing = index && oldFiles(place, today(), wall());
      return all();
    },
    recent: () => {
      if (!index) return null;
      const old = oldFiles(place, today(), wall());
      const past = old.key === null ? null : index.read(old.key);
      missing = past ? null : old;
      if (!past) return null;
      const { isOld } = old;
      const older = () => {
        const found = past.older();
        // Then all files are read, and it is made anew.
        if (!found) missing = old;
        return found;
      };
      return {
        past: { ...past, older },
        isOld,
        files: readJournal(place, wall(), { month: (month) => !isOld(month) }),
      };
    },
  };
}

/** So many days into a month the files of the last one may still come from other devices. Ours. */
const LATE_DAYS = 7;

/** Files of the months before this one, and before its first days of the last: they grow no more, as a rule. */
interface OldFiles {
  readonly isOld: (month: string) => boolean;
  /** Changes with the name, size or time of any of them; null where one was written to just now. */
  readonly key: string | null;
}

/**
 * Looks at the old files without reading them.
 * @param today the local day now, `2026-11-25`
 * @param wall now, in epoch milliseconds
 */
function oldFiles({ files, dataDir }: JournalPlace, today: string, wall: number): OldFiles {
  const since = monthDaysBefore(LATE_DAYS, today);
  const isOld = (month: string): boolean => /^\d{4}-\d\d$/.test(month) && month < since;
  const journal = join(dataDir, JOURNAL_FOLDER);
  const found = onDisk(`The journal in ${journal} could not be read`, () =>
    files
      .list(journal)
      .filter(({ name }) => isOld(name))
      .flatMap(({ name: month }) => {
        const folder = join(journal, month);
        return files.list(folder).map(({ name }) => ({
          name: `${month}/${name}`,
          about: aboutQuietly(files, `${folder}${sep}${name}`),
        }));
      }),
  );
  // It may have come half so far, and what is missing is then not told yet.
  const isSettled = found.every(({ about }) => !about || !isNews(about.modified, wall));
  const names = found.map(({ name, about }) => `${name} ${about?.size} ${about?.modified}`);
  const hash = createHash('sha256').update(names.join('\n'));
  return { isOld, key: isSettled ? hash.digest('hex') : null };
}

/** What cannot be looked at is told when it is read. */
function aboutQuietly(files: Files, path: string) {
  try {
    return files.about(path);
  } catch {
    return null;
  }
}

/** The calendar month of a day some days before another, as `2026-10`. */
function monthDaysBefore(days: number, day: string): string {
  const at = new Date(`${day}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() - days);
  return at.toISOString().slice(0, 7);
}
