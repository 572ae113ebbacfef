const FULL = 'the disk is full';
const DENIED = 'this user may not do that there';
const TOO_MANY = 'too many files are open';

const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: FULL,
  EDQUOT: FULL,
  EFBIG: 'the file may not grow any more',
  EACCES: DENIED,
  EPERM: DENIED,
  EROFS: 'the disk can only be read',
  EIO: 'the disk reports an error of its own',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  ENOENT: 'there is no such folder, or the system lets nothing be made in it',
  ENOTDIR: 'a file stands where a folder should be',
  EEXIST: 'a file stands where a folder should be',
  EMFILE: TOO_MANY,
  ENFILE: TOO_MANY,
};

/** The system's code of an error, such as `ENOSPC`; null where it has none. */
export function codeOf(error: unknown): string | null {
  const code = (error as { readonly code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : null;
}

/** What the system said of a file or folder that could not be read or written, as the end of a sentence. */
export function diskWords(error: unknown): string {
  const code = codeOf(error);
  return code === null
    ? 'it failed for an unknown reason'
    : (WORDS[code] ?? `the system says ${code}`);
}

/** The same as a sentence of its own. */
export function diskSentence(error: unknown): string {
  const words = diskWords(error);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
