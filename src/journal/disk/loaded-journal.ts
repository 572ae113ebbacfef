import { foldHistory } from '../fold-history.ts';
import type { History } from '../history.ts';
import type { JournalEvent } from '../records.ts';
import type { FileOnDisk } from './read-journal.ts';

/** What was read from disk, kept in step with what is written since. */
export interface LoadedJournal {
  readonly files: () => readonly FileOnDisk[];
  readonly history: () => History;
  /** Events were written to a file of this device. */
  readonly wrote: (
    file: { readonly path: string; readonly name: string },
    events: readonly JournalEvent[],
  ) => void;
  readonly forget: () => void;
}

export function loadedJournal(read: () => FileOnDisk[]): LoadedJournal {
  let files: FileOnDisk[] | null = null;
  let history: History | null = null;
  const filesNow = (): FileOnDisk[] => {
    files ??= read();
    return files;
  };
  return {
    files: filesNow,
    history: () => {
      history ??= foldHistory(filesNow());
      return history;
    },
    wrote: ({ path, name }, events) => {
      history = null;
      if (!files) return;
      const lines = events.map((event) => ({ kind: 'event', event }) as const);
      const known = files.find((file) => file.path === path);
      files = known
        ? files.map((file) =>
            file === known ? { ...file, lines: [...file.lines, ...lines], tail: 0 } : file,
          )
        : // Its size is not needed: a file is read anew before it is opened to go on.
          [...files, { path, name, own: true, lines, tail: 0, wholeBytes: 0 }];
    },
    forget: () => {
      files = null;
      history = null;
    },
  };
}
