import { foldHistory, historySince } from '../fold-history.ts';
import type { History } from '../history.ts';
import type { JournalEvent } from '../records.ts';
import { type FileOnDisk, monthOf } from './file-names.ts';
import type { JournalReader, Recent } from './read-journal.ts';

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
  /** Reads every file again, whatever was kept of old ones. */
  readonly readAnew: () => void;
}

type Written = Parameters<LoadedJournal['wrote']>;

export function loadedJournal(reader: JournalReader): LoadedJournal {
  let files: readonly FileOnDisk[] | null = null;
  let recent: Recent | null = null;
  let history: History | null = null;
  let whole: History | null = null;
  const filesNow = (): readonly FileOnDisk[] => {
    files ??= reader.all();
    return files;
  };
  const wholeNow = (): History => {
    whole ??= foldHistory(filesNow());
    return whole;
  };
  const historyNow = (): History => {
    if (files) return wholeNow();
    recent ??= reader.recent();
    return (recent && historySince(recent.past, recent.files, wholeNow)) ?? wholeNow();
  };
  const forget = (): void => {
    files = null;
    recent = null;
    history = null;
    whole = null;
  };
  return {
    files: filesNow,
    history: () => {
      history ??= historyNow();
      return history;
    },
    wrote: (file, events) => {
      history = null;
      whole = null;
      files = files && withWritten(files, file, events);
      const isRecent = recent && !recent.isOld(monthOf(file.name));
      recent =
        recent && isRecent ? { ...recent, files: withWritten(recent.files, file, events) } : null;
    },
    forget,
    readAnew: () => {
      forget();
      files = reader.anew();
    },
  };
}

function withWritten(
  files: readonly FileOnDisk[],
  { path, name }: Written[0],
  events: Written[1],
): readonly FileOnDisk[] {
  const lines = events.map((event) => ({ kind: 'event', event }) as const);
  const known = files.find((file) => file.path === path);
  return known
    ? files.map((file) =>
        file === known ? { ...file, lines: [...file.lines, ...lines], tail: 0 } : file,
      )
    : // Its size is not needed: a file is read anew before it is opened to go on.
      [...files, { path, name, own: true, lines, tail: 0, wholeBytes: 0 }];
}
