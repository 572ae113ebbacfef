import { basename, dirname } from 'node:path';
import { writeNewFile } from './append-file.ts';
import type { Files } from './files.ts';

/**
 * Cuts a file back to its whole lines. What is cut off is first kept beside it, on disk.
 * @param suffix random letters for the name of the file that keeps it
 */
export function repairTail(files: Files, path: string, wholeBytes: number, suffix: string): void {
  const bytes = files.read(path);
  if (!bytes || bytes.length <= wholeBytes) return;
  const kept = `${basename(path)}.cut-${suffix}`;
  writeNewFile(files, dirname(path), kept, bytes.subarray(wholeBytes));
  const file = files.open(path);
  try {
    files.truncate(file, wholeBytes);
    files.sync(file);
  } finally {
    files.close(file);
  }
}
