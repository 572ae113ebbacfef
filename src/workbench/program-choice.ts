import { copyFileSync, existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { nearestKey } from '../text/nearest.ts';
import { Refusal } from '../text/problem.ts';

export const FIRST_PROGRAM = 'three-day';

export interface ProgramSources {
  /** `--program`: a path, or the name of a program in the data folder or among the shipped ones. */
  readonly asked: string | null;
  /** Program of the last session, from the settings. */
  readonly last: string | null;
  readonly dataFolder: string;
  readonly shippedPrograms: string;
  readonly cwd: string;
}

/**
 * The program file to read: what was asked for, else that of the last session, else the first of
 * the shipped ones. Nothing is written; see {@link ownCopy}.
 */
export function chooseProgram(sources: ProgramSources): string {
  const { asked, last, shippedPrograms } = sources;
  if (asked !== null) return askedProgram(asked, sources);
  if (last !== null && existsSync(last)) return last;
  return named(FIRST_PROGRAM, sources) ?? join(shippedPrograms, `${FIRST_PROGRAM}.yaml`);
}

function askedProgram(asked: string, sources: ProgramSources): string {
  const path = resolve(sources.cwd, asked);
  if (statSync(path, { throwIfNoEntry: false })?.isFile()) return path;
  const found = named(asked, sources);
  if (found) return found;
  const names = shippedNames(sources.shippedPrograms);
  const near = nearestKey(asked, names);
  throw new Refusal({
    what: `There is no program "${asked}": neither a file of that path nor a program of that name.`,
    fix: near ? `Did you mean "${near}"?` : `Shipped programs: ${names.join(', ')}.`,
  });
}

function named(name: string, { dataFolder, shippedPrograms }: ProgramSources): string | null {
  if (basename(name) !== name) return null;
  return (
    [join(programsFolder(dataFolder), `${name}.yaml`), join(shippedPrograms, `${name}.yaml`)].find(
      (path) => existsSync(path),
    ) ?? null
  );
}

/** Folder of the lifter's own programs. */
export const programsFolder = (dataFolder: string): string => join(dataFolder, 'programs');

const shippedNames = (folder: string): string[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => basename(file, '.yaml'));

/**
 * A path that may be edited: a shipped program is first copied into the data folder, where the
 * lifter's own copy survives an update; any other file is the lifter's already.
 */
export function ownCopy(path: string, sources: ProgramSources): string {
  if (resolve(path, '..') !== resolve(sources.shippedPrograms)) return path;
  const folder = programsFolder(sources.dataFolder);
  const copy = join(folder, basename(path));
  if (existsSync(copy)) return copy;
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  copyFileSync(path, copy);
  const schema = join(sources.shippedPrograms, 'program.schema.json');
  if (existsSync(schema)) copyFileSync(schema, join(folder, 'program.schema.json'));
  return copy;
}
