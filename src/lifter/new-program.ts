import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Wishes } from '../program/draft/wishes.ts';
import { writeWholeFile } from '../program/write-file.ts';
import { diskSentence } from '../text/disk-words.ts';
import { Refusal } from '../text/problem.ts';
import type { Ports } from './ports.ts';

const SCHEMA = 'program.schema.json';

/** What a drafted program is called where its lifter names it nothing else. */
export const DRAFT_NAMES: Readonly<Record<Wishes['days'], string>> = {
  2: 'My two days',
  3: 'My three days',
  4: 'My four days',
};

/** The file that a program of this name lies in, without its folder: `my-three-days.yaml`. */
export const programFileName = (name: string): string =>
  `${
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'program'
  }.yaml`;

/**
 * Writes a program, and beside it the schema by which editors complete it.
 * @throws Refusal when it cannot be written; then what lay there is as it was.
 */
export function writeNewProgram(
  path: string,
  text: string,
  { clock, shippedPrograms }: Pick<Ports, 'clock' | 'shippedPrograms'>,
): void {
  const folder = dirname(path);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const schema = join(folder, SCHEMA);
    const shipped = join(shippedPrograms, SCHEMA);
    if (!existsSync(schema) && existsSync(shipped)) copyFileSync(shipped, schema);
  } catch (error) {
    throw new Refusal({
      what: `${folder} cannot be written to.`,
      why: diskSentence(error),
      fix: 'Mend that, or name another place: "holdfast draft --out FILE".',
    });
  }
  const problem = writeWholeFile(path, text, clock.read().wall.toString(36));
  if (problem) throw new Refusal(problem);
}
