import { lstatSync, statSync } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import type { Files } from '../journal/disk/files.ts';
import { writeWholeFile } from '../program/write-file.ts';
import { diskSentence } from '../text/disk-words.ts';
import { Refusal } from '../text/problem.ts';
import { safeOutput } from '../text/safe-text.ts';
import type { Call } from './call.ts';

/**
 * Writes a document to the file named by `--out`, or to stdout. A file that is there is only
 * replaced with `--replace`, and stays as it was until the new one is whole on disk.
 * @param dataFolder where the lifter's own data are: no document takes their place
 */
export function writeOut(
  { options, ports, write, tell }: Call,
  text: string,
  dataFolder: string,
): void {
  if (typeof options.out !== 'string' || options.out === '-') {
    write(text.replace(/\n$/, ''));
    return;
  }
  const path = resolve(ports.cwd, options.out);
  refuseData(path, dataFolder, ports.files);
  refuseTaken(path, options.replace === true);
  const problem = writeWholeFile(path, safeOutput(text), ports.clock.read().wall.toString(36));
  if (problem) throw new Refusal({ ...problem, fix: 'Name another place.' });
  tell(`Written to ${path}.`);
}

/** @throws Refusal for a path in the data folder, links followed. */
export function refuseData(path: string, dataFolder: string, { realPath }: Files): void {
  const data = realPath(dataFolder);
  if (!isWithin(realPath(path), data)) return;
  throw new Refusal({
    what: `${path} lies in the data folder.`,
    why: 'What stands there is read as training data, and must never be written over.',
    fix: `Name a place outside of ${data}.`,
  });
}

export const isWithin = (path: string, folder: string): boolean =>
  `${path}${sep}`.startsWith(`${folder}${sep}`);

/** @throws Refusal for what is there, unless it is a file that may be replaced. */
export function refuseTaken(path: string, mayReplace: boolean): void {
  const found = aboutFile(path);
  if (!found && lstatSync(path, { throwIfNoEntry: false })) {
    throw new Refusal({
      what: `${path} is a link that leads to nothing.`,
      fix: 'Name another file with --out, or delete the link.',
    });
  }
  if (!found) return;
  if (!found.isFile()) {
    throw new Refusal({
      what: `${path} is no file that could be replaced.`,
      fix: 'Name a file with --out.',
    });
  }
  if (!mayReplace) {
    throw new Refusal({
      what: `${path} is there already.`,
      fix: 'Name another file with --out, or add --replace.',
    });
  }
}

function aboutFile(path: string) {
  try {
    return statSync(path, { throwIfNoEntry: false });
  } catch (error) {
    throw new Refusal({
      what: `${path} could not be written in ${dirname(path)}.`,
      why: diskSentence(error),
      fix: 'Name another place.',
    });
  }
}
