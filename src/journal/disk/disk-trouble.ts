import { codeOf, diskWords } from '../../text/disk-words.ts';
import { Refusal } from '../../text/problem.ts';

/** Codes of our own, for what the system would read for ever. */
export const NO_FILE = 'NO_FILE';
export const TOO_LARGE = 'TOO_LARGE';

const OURS: Readonly<Record<string, string>> = {
  [NO_FILE]: 'it is no file',
  [TOO_LARGE]: 'it is too large to be one of holdfast',
};

const FREE = 'Free some space, then do it again.';
const ALLOW = 'Give yourself the right to write there, or choose another folder with --data.';
const MOVE = 'Move it to another place.';
const CLOSE = 'Close other programs, then do it again.';

/** What to do about it, where there is more to do than to try again. */
const FIXES: Readonly<Record<string, string>> = {
  ENOSPC: FREE,
  EDQUOT: FREE,
  EFBIG: 'Raise the limit on file sizes.',
  EACCES: ALLOW,
  EPERM: ALLOW,
  EROFS: 'Make it writable, or choose another folder with --data.',
  EIO: 'Back up the data folder and check the disk; then do it again.',
  EISDIR: MOVE,
  ELOOP: 'Delete the link.',
  [NO_FILE]: MOVE,
  [TOO_LARGE]: MOVE,
  ENOENT: 'Bring the folder back, or choose another one with --data.',
  ENOTDIR: 'Choose another folder with --data.',
  EMFILE: CLOSE,
  ENFILE: CLOSE,
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
    throw new Refusal({
      what: `${failed}: ${OURS[code] ?? diskWords(error)}.`,
      fix: FIXES[code] ?? 'Do it again.',
    });
  }
}
