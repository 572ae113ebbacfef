import type { Files } from '../../src/journal/disk/files.ts';
import { systemError } from './memory-files.ts';

/** What goes wrong at a call: an error, or fewer bytes than given. */
export interface Fault {
  /** The call that fails, from 1. */
  readonly at: number;
  /** How many calls in a row fail. */
  readonly times: number;
  readonly code: string;
  /** A write that fails has written the first half. */
  readonly halfWritten: boolean;
}

/** Files whose calls fail as told; `calls` counts those made, `isSpent` tells whether the fault was met. */
export function failingFiles(files: Files, fault: Fault) {
  let calls = 0;
  const fails = (): boolean => {
    calls += 1;
    return calls >= fault.at && calls < fault.at + fault.times;
  };
  const guarded = <Args extends unknown[], Found>(act: (...args: Args) => Found) => {
    return (...args: Args): Found => {
      if (fails()) throw systemError(fault.code);
      return act(...args);
    };
  };
  const failing: Files = {
    list: guarded(files.list),
    read: guarded(files.read),
    about: guarded(files.about),
    aboutOpen: guarded(files.aboutOpen),
    makeFolder: guarded(files.makeFolder),
    create: guarded(files.create),
    open: guarded(files.open),
    write: (file, bytes, position) => {
      if (!fails()) return files.write(file, bytes, position);
      if (fault.halfWritten) files.write(file, bytes.subarray(0, bytes.length >> 1), position);
      throw systemError(fault.code);
    },
    truncate: guarded(files.truncate),
    sync: guarded(files.sync),
    close: guarded(files.close),
    syncFolder: guarded(files.syncFolder),
    remove: guarded(files.remove),
    rename: guarded(files.rename),
    link: guarded(files.link),
    realPath: guarded(files.realPath),
  };
  return { files: failing, isSpent: () => calls >= fault.at };
}

/** Files that write a few bytes at a time. */
export const shortWriting = (files: Files, most: number): Files => ({
  ...files,
  write: (file, bytes, position) => files.write(file, bytes.subarray(0, most), position),
});
