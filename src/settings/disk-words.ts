const WORDS: Readonly<Record<string, string>> = {
  ELOOP: 'its links lead in a circle',
  EACCES: 'this user may not do that there',
  EPERM: 'this user may not do that there',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full',
  EIO: 'the disk reports an error of its own',
  ENOENT: 'the system lets nothing be made there',
  ENOTDIR: 'a file stands where a folder should be',
  EEXIST: 'a file stands where a folder should be',
  EISDIR: 'it is a folder',
};

/** What the system said of settings that could not be read or written, as the end of a sentence. */
export function diskWords(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return code === undefined
    ? 'it failed for an unknown reason'
    : (WORDS[code] ?? `the system says ${code}`);
}
