import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { whyNotWritten } from '../program/write-file.ts';
import { Refusal } from '../text/problem.ts';
import type { Call } from './call.ts';

/**
 * Writes a document to the file named by `--out`, or to stdout. A file that is there is only
 * replaced with `--replace`.
 */
export function writeOut({ options, ports, print, tell }: Call, text: string): void {
  if (typeof options.out !== 'string') {
    print(text.replace(/\n$/, ''));
    return;
  }
  const path = resolve(ports.cwd, options.out);
  try {
    writeFileSync(path, text, { flag: options.replace === true ? 'w' : 'wx' });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new Refusal(
      code === 'EEXIST'
        ? { what: `${path} is there already.`, fix: 'Name another file, or add --replace.' }
        : {
            what: `${path} could not be written.`,
            why: whyNotWritten(error),
            fix: 'Name another place.',
          },
    );
  }
  tell(`Written to ${path}.`);
}
