import { copyFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Before } from '../program/draft/wishes.ts';
import { whyNotWritten, writeWholeFile } from '../program/write-file.ts';
import { Refusal } from '../text/problem.ts';
import { openWorkbench, type Workbench } from '../workbench/open-workbench.ts';
import { programsFolder } from '../workbench/program-choice.ts';
import type { Call } from './call.ts';
import { isWithin, refuseData, refuseTaken } from './write-out.ts';

const SCHEMA = 'program.schema.json';

/** The program that `--from` names, as a path or by its name; null without the option. */
export function programBefore({ options, global, ports }: Call): Before | null {
  if (typeof options.from !== 'string') return null;
  const other = openWorkbench(ports, { ...global, program: options.from });
  const program = other.program();
  return { program, text: readFileSync(other.programPath(), 'utf8') };
}

/**
 * Where the draft goes: `--out`, or the file it comes from, or a file of its name among the
 * lifter's programs.
 * @throws Refusal for a file that is there, without `--replace`, and for a place among the training data
 */
export function draftPath({ options, global, ports }: Call, workbench: Workbench, name: string) {
  const own = programsFolder(workbench.folders.data);
  const path = ((): string => {
    if (typeof options.out === 'string') return resolve(ports.cwd, options.out);
    if (typeof options.from !== 'string') return join(own, `${fileName(name)}.yaml`);
    const from = openWorkbench(ports, { ...global, program: options.from }).programPath();
    const isShipped = dirname(resolve(from)) === resolve(ports.shippedPrograms);
    return isShipped ? join(own, basename(from)) : resolve(from);
  })();
  const { realPath } = ports.files;
  // Programs lie in the data folder too, but beside the training data.
  if (!isWithin(realPath(path), realPath(own)))
    refuseData(path, workbench.folders.data, ports.files);
  refuseTaken(path, options.replace === true);
  return path;
}

const fileName = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'program';

/** Writes the program, and beside it the schema by which editors complete it. */
export function writeDraftFile(path: string, text: string, { ports }: Call): void {
  const folder = dirname(path);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const schema = join(folder, SCHEMA);
    const shipped = join(ports.shippedPrograms, SCHEMA);
    if (!existsSync(schema) && existsSync(shipped)) copyFileSync(shipped, schema);
  } catch (error) {
    throw new Refusal({
      what: `${folder} cannot be written to.`,
      why: whyNotWritten(error),
      fix: 'Name another place with --out.',
    });
  }
  const problem = writeWholeFile(path, text, ports.clock.read().wall.toString(36));
  if (problem) throw new Refusal(problem);
}
