import type { Files } from '../../src/journal/disk/files.ts';

/** The real disk, whose writing calls fail when a test says so. */
export function drivenFiles(real: Files) {
  let trouble: { code: string; after: number } | null = null;
  const guard = <Args extends unknown[], Result>(call: (...args: Args) => Result) => {
    return (...args: Args): Result => {
      if (trouble && trouble.after-- <= 0) {
        throw Object.assign(new Error(`${trouble.code}, as the test ordered`), {
          code: trouble.code,
        });
      }
      return call(...args);
    };
  };
  const files: Files = {
    ...real,
    makeFolder: guard(real.makeFolder),
    create: guard(real.create),
    write: guard(real.write),
    truncate: guard(real.truncate),
    sync: guard(real.sync),
    syncFolder: guard(real.syncFolder),
  };
  return {
    files,
    failAfter: (after: number, code: string) => {
      trouble = { code, after };
    },
    mend: () => {
      trouble = null;
    },
  };
}
