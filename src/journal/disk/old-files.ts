import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { onDisk } from './disk-trouble.ts';
import { JOURNAL_FOLDER } from './file-names.ts';
import { ARRIVING_MS, type JournalPlace } from './read-journal.ts';

/** Files of the months before this one and the last: they grow no more, as a rule. */
export interface OldFiles {
  readonly isOld: (month: string) => boolean;
  /** Changes with the name, size or time of any of them; null where one was written to just now. */
  readonly key: string | null;
}

/**
 * Looks at the old files without reading them.
 * @param today the local day now, `2026-11-25`
 * @param wall now, in epoch milliseconds
 */
export function oldFiles({ files, dataDir }: JournalPlace, today: string, wall: number): OldFiles {
  const since = monthBefore(today);
  const isOld = (month: string): boolean => /^\d{4}-\d\d$/.test(month) && month < since;
  const journal = join(dataDir, JOURNAL_FOLDER);
  const found = onDisk(`The journal in ${journal} could not be read`, () =>
    files
      .list(journal)
      .filter(({ name }) => isOld(name))
      .flatMap(({ name: month }) =>
        files.list(join(journal, month)).map(({ name }) => ({
          name: `${month}/${name}`,
          about: files.about(join(journal, month, name)),
        })),
      ),
  );
  // It may have come half so far, and what is missing is then not told yet.
  const isSettled = found.every(({ about }) => !about || wall - about.modified >= ARRIVING_MS);
  const hash = createHash('sha256');
  for (const { name, about } of found) hash.update(`${name} ${about?.size} ${about?.modified}\n`);
  return { isOld, key: isSettled ? hash.digest('hex') : null };
}

/** Month of a file, by its path below the data folder. */
export const monthOf = (name: string): string => basename(dirname(name));

/** The calendar month before that of a day, as `2026-10`. */
function monthBefore(day: string): string {
  const [year, month] = [Number(day.slice(0, 4)), Number(day.slice(5, 7))];
  return month > 1
    ? `${day.slice(0, 5)}${String(month - 1).padStart(2, '0')}`
    : `${String(year - 1).padStart(4, '0')}-12`;
}
