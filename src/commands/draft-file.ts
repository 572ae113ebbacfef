import { readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { programFileName } from '../lifter/drafting.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { programsFolder } from '../lifter/program-choice.ts';
import type { Before } from '../program/draft/wishes.ts';
import type { Call } from './call.ts';
import { isWithin, refuseData, refuseTaken } from './write-out.ts';

/** The program that `--from` names, as a path or by its name; null without the option. */
export function programBefore({ options, global, ports }: Call): Before | null {
  if (typeof options.from !== 'string') return null;
  const other = openLifter(ports, { ...global, program: options.from });
  const program = other.program();
  return { program, text: readFileSync(other.programPath(), 'utf8') };
}

/**
 * Where the draft goes: `--out`, or the file it comes from, or a file of its name among the
 * lifter's programs.
 * @throws Refusal for a file that is there, without `--replace`, and for a place among the training data
 */
export function draftPath({ options, global, ports }: Call, lifter: Lifter, name: string) {
  const own = programsFolder(lifter.folders.data);
  const path = ((): string => {
    if (typeof options.out === 'string') return resolve(ports.cwd, options.out);
    if (typeof options.from !== 'string') return join(own, programFileName(name));
    const from = openLifter(ports, { ...global, program: options.from }).programPath();
    const isShipped = dirname(resolve(from)) === resolve(ports.shippedPrograms);
    return isShipped ? join(own, basename(from)) : resolve(from);
  })();
  const { realPath } = ports.files;
  // Programs lie in the data folder too, but beside the training data.
  if (!isWithin(realPath(path), realPath(own))) refuseData(path, lifter.folders.data, ports.files);
  refuseTaken(path, options.replace === true);
  return path;
}
