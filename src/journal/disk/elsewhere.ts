import { join } from 'node:path';
import { JOURNAL_FOLDER } from './file-names.ts';
import type { JournalPlace } from './read-journal.ts';

/** Tells whether others wrote to this month's journal files since it was last asked. */
export interface Elsewhere {
  /** A file that this process writes to itself says nothing about others. */
  readonly own: (path: string) => unknown;
  /** False the first time. */
  readonly changed: () => boolean;
}

/** @param month the folder that is written to now: `2026-11` */
export function elsewhere(
  { files, dataDir }: Pick<JournalPlace, 'files' | 'dataDir'>,
  month: () => string,
): Elsewhere {
  const owned = new Set<string>();
  let seen: ReadonlyMap<string, number | undefined> | null = null;
  const now = () => {
    const folder = join(dataDir, JOURNAL_FOLDER, month());
    const paths = files.list(folder).map(({ name }) => join(folder, name));
    return new Map(
      paths.filter((path) => !owned.has(path)).map((path) => [path, files.about(path)?.size]),
    );
  };
  return {
    own: (path) => owned.add(path),
    changed: () => {
      const before = seen;
      seen = now();
      if (before === null) return false;
      const others = [...before].filter(([path]) => !owned.has(path));
      return others.length !== seen.size || others.some(([path, size]) => seen?.get(path) !== size);
    },
  };
}
