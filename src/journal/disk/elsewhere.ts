import { join } from 'node:path';
import { JOURNAL_FOLDER } from './file-names.ts';
import type { JournalPlace } from './read-journal.ts';

/** Tells whether others wrote to this month's journal files since it was last asked. */
export interface Elsewhere {
  /** A file that this process writes to itself says nothing about others. */
  readonly own: (path: string) => void;
  /** False the first time. */
  readonly changed: () => boolean;
}

/** @param month the folder that is written to now: `2026-11` */
export function elsewhere(
  { files, dataDir }: Pick<JournalPlace, 'files' | 'dataDir'>,
  month: () => string,
): Elsewhere {
  const owned = new Set<string>();
  let seen: string | null = null;
  const now = (): string => {
    const folder = join(dataDir, JOURNAL_FOLDER, month());
    return files
      .list(folder)
      .map(({ name }) => join(folder, name))
      .filter((path) => !owned.has(path))
      .map((path) => `${path} ${files.about(path)?.size}`)
      .sort()
      .join('\n');
  };
  return {
    own: (path) => {
      owned.add(path);
      // What it held so far was seen by the reader.
      if (seen !== null) seen = now();
    },
    changed: () => {
      const before = seen;
      seen = now();
      return before !== null && before !== seen;
    },
  };
}
