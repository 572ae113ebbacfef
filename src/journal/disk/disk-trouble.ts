import { Refusal } from '../../text/problem.ts';

/** The system's code of an error, such as `ENOSPC`; null where it has none. */
export function codeOf(error: unknown): string | null {
  const code = (error as { readonly code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : null;
}

/** Codes of our own, for what the system would read for ever. */
export const NO_FILE = 'NO_FILE';
export const TOO_LARGE = 'TOO_LARGE';

interface Trouble {
  readonly what: string;
  readonly fix: string;
}

const FULL: Trouble = { what: 'the disk is full', fix: 'Free some space, then do it again.' };
const DENIED: Trouble = {
  what: 'this user may not write there',
  fix: 'Give yourself the right to write there, or choose another folder with --data.',
};
const NOT_THERE: Trouble = {
  what: 'the folder is gone, or the system lets nothing be made in it',
  fix: 'Bring the folder back, or choose another one with --data.',
};

const TROUBLES: Readonly<Record<string, Trouble>> = {
  ENOSPC: FULL,
  EDQUOT: FULL,
  EFBIG: { what: 'the file may not grow any more', fix: 'Raise the limit on file sizes.' },
  EACCES: DENIED,
  EPERM: DENIED,
  EROFS: {
    what: 'the disk can only be read',
    fix: 'Make it writable, or choose another folder with --data.',
  },
  EIO: {
    what: 'the disk reports an error of its own',
    fix: 'Back up the data folder and check the disk; then do it again.',
  },
  EISDIR: { what: 'it is a folder', fix: 'Move it to another place.' },
  ELOOP: { what: 'its links lead in a circle', fix: 'Delete the link.' },
  [NO_FILE]: { what: 'it is no file', fix: 'Move it to another place.' },
  [TOO_LARGE]: { what: 'it is too large to be one of holdfast', fix: 'Move it to another place.' },
  ENOENT: NOT_THERE,
  ENOTDIR: {
    what: 'a file stands where a folder should be',
    fix: 'Choose another folder with --data.',
  },
  EMFILE: { what: 'too many files are open', fix: 'Close other programs, then do it again.' },
  ENFILE: { what: 'too many files are open', fix: 'Close other programs, then do it again.' },
};

/**
 * Runs `act`; what the disk says turns into a sentence for the lifter.
 * @param failed what could not be done, with its place: `The set could not be saved in …`
 */
export function onDisk<Found>(failed: string, act: () => Found): Found {
  try {
    return act();
  } catch (error) {
    const code = codeOf(error);
    if (error instanceof Refusal || code === null) throw error;
    const trouble = TROUBLES[code] ?? { what: `the system says ${code}`, fix: 'Do it again.' };
    throw new Refusal({ what: `${failed}: ${trouble.what}.`, fix: trouble.fix });
  }
}
