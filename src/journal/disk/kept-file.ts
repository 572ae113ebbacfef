import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { crc32 } from './crc32.ts';
import { quietly, writeAll } from './event-file.ts';
import type { Files } from './files.ts';

const CHECK_DIGITS = 8;

/**
 * Names what is kept: what it was worked out of, and by which version. The parts of the built program
 * are named after what is in them, so that another version, which may read the same differently, finds
 * nothing of its own.
 * @param url of the module that keeps it
 */
export const keptHead = (url: string, of: string): string =>
  createHash('sha256')
    .update(`${basename(url)} ${of}`)
    .digest('hex');

/**
 * What was worked out and is kept in the cache folder, so that it need not be worked out again. It may
 * be deleted, and a power cut may leave anything of it: a check value covers all that stands behind it.
 * @param parse makes of the text what was kept
 * @returns null where there is none, or it is damaged, or of another head, or cannot be parsed
 */
export function readKept<Kept>(
  files: Files,
  path: string,
  head: string,
  parse: (text: string) => Kept,
): Kept | null {
  let found: Kept | null = null;
  quietly(() => {
    const bytes = files.read(path);
    const text = bytes && content(bytes, head);
    found = text === null ? null : parse(text);
  });
  return found;
}

/** Fails silently: then it is worked out the next time, too. `random`: letters for a name that is not taken. */
export function writeKept(
  files: Files,
  {
    folder,
    path,
    random,
  }: { readonly folder: string; readonly path: string; readonly random: () => string },
  head: string,
  kept: string,
): void {
  const text = Buffer.from(`${head}\n${kept}`);
  quietly(() => {
    files.makeFolder(folder);
    replaceFile(
      files,
      path,
      `${path}.${random()}`,
      Buffer.concat([Buffer.from(checkOf(text)), text]),
    );
  });
}

const checkOf = (bytes: Uint8Array): string =>
  `${crc32(bytes).toString(16).padStart(CHECK_DIGITS, '0')} `;

function content(bytes: Uint8Array, head: string): string | null {
  const decoder = new TextDecoder();
  const [check, start] = [CHECK_DIGITS + 1, CHECK_DIGITS + 1 + head.length];
  if (decoder.decode(bytes.subarray(check, start)) !== head) return null;
  const isWhole = decoder.decode(bytes.subarray(0, check)) === checkOf(bytes.subarray(check));
  return isWhole ? decoder.decode(bytes.subarray(start)) : null;
}

/** Writes a whole file, under the name `made` until it is whole; throws what the disk says. */
export function replaceFile(files: Files, path: string, made: string, bytes: Uint8Array): void {
  const file = files.create(made);
  try {
    try {
      writeAll(files, file, bytes, 0);
    } finally {
      files.close(file);
    }
    files.rename(made, path);
  } catch (error) {
    quietly(() => files.remove(made));
    throw error;
  }
}
