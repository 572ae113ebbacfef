import { randomUUID } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { readProgramFile } from '../program/read-file.ts';
import { writeWholeFile } from '../program/write-file.ts';
import type { Folders } from '../settings/folders.ts';
import type { Settings } from '../settings/settings.ts';
import { diskSentence } from '../text/disk-words.ts';
import { nearestKey } from '../text/nearest.ts';
import { Refusal } from '../text/problem.ts';
import type { Unit } from '../training/mass.ts';

/** What is trained by where nothing else was chosen. */
const FIRST_PROGRAMS: Readonly<Record<Unit, string>> = { kg: 'three-day', lb: 'three-day-lb' };

export interface ProgramSources {
  /** `--program`: a path, or the name of a program in the data folder or among the shipped ones. */
  readonly asked: string | null;
  /** Program of the last session in this data folder, from the settings. */
  readonly last: string | null;
  /** What the program of the last session in the journal is called; asked where `last` does not help. */
  readonly lastName: () => string | null;
  /** Of what is owned, which tells what a lifter counts in before there is a program. */
  readonly gearUnit: () => Unit;
  readonly dataFolder: string;
  readonly shippedPrograms: string;
  readonly cwd: string;
}

/**
 * The program file that the settings remember for a data folder; null where they do not. Settings
 * of before any other folder was remembered knew one program for all.
 */
export const rememberedProgram = (
  { program, programs }: Pick<Settings, 'program' | 'programs'>,
  { data, isUsual }: Pick<Folders, 'data' | 'isUsual'>,
): string | null =>
  programs[data] ?? (isUsual || Object.keys(programs).length === 0 ? program : null);

/** What is kept in the settings so that a program is the one of a data folder from now on. */
export const toRemember = (
  path: string,
  { programs }: Pick<Settings, 'programs'>,
  { data, isUsual }: Pick<Folders, 'data' | 'isUsual'>,
): Partial<Settings> => (isUsual ? { program: path } : { programs: { ...programs, [data]: path } });

/**
 * The program file to read: what was asked for, else that of the last session, else one of the
 * lifter's or of the shipped ones that is called like that of the last session (the data folder
 * came from another machine, or the file was moved), else the lifter's own that was changed last,
 * else the first of the shipped ones in the unit of the gear. Nothing is written; see {@link ownCopy}.
 */
export function chooseProgram(sources: ProgramSources): string {
  const { asked, last, shippedPrograms } = sources;
  if (asked !== null) return askedProgram(asked, sources);
  if (last !== null && existsSync(last)) return last;
  const called = calledLikeLast(sources);
  if (called !== null) return called;
  const own = latestOwn(sources);
  if (own !== null) return own;
  const first = FIRST_PROGRAMS[sources.gearUnit()];
  return named(first, sources) ?? join(shippedPrograms, `${first}.yaml`);
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

function calledLikeLast({ lastName, dataFolder, shippedPrograms }: ProgramSources): string | null {
  const name = lastName();
  if (name === null) return null;
  const files = [programsFolder(dataFolder), shippedPrograms].flatMap(programsIn);
  // Reading one is slow. Nearly always the name stands in the file as it is; YAML may write it otherwise.
  const likely = new Set(files.filter((path) => mayName(path, name)));
  const found = [...likely, ...files.filter((path) => !likely.has(path))].find((path) => {
    const read = readProgramFile(path);
    return read.ok && read.program.name === name;
  });
  return found ?? null;
}

/** The lifter's own program file that was changed last; null where there is none. */
export function latestOwn({ dataFolder }: Pick<ProgramSources, 'dataFolder'>): string | null {
  const [latest] = programsIn(programsFolder(dataFolder))
    .map((path) => ({ path, changed: statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0 }))
    .sort((a, b) => b.changed - a.changed);
  return latest?.path ?? null;
}

function mayName(path: string, name: string): boolean {
  try {
    // A pipe would never come to an end.
    return statSync(path).isFile() && readFileSync(path, 'utf8').includes(`name: ${name}\n`);
  } catch {
    // It is told where it is read as a program.
    return false;
  }
}

/** None where there is no such folder, or a file in its place. */
function programsIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((file) => file.endsWith('.yaml'))
      .map((file) => join(folder, file));
  } catch {
    // What stands in the way is told where something is written there.
    return [];
  }
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
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const schema = join(sources.shippedPrograms, 'program.schema.json');
    if (existsSync(schema)) copyFileSync(schema, join(folder, 'program.schema.json'));
  } catch (error) {
    throw new Refusal({
      what: `A copy of the program for you to change could not be made in ${folder}.`,
      why: diskSentence(error),
      fix: 'Mend that, or name a program file of your own with --program.',
    });
  }
  const problem = writeWholeFile(copy, text, randomUUID());
  if (problem) throw new Refusal(problem);
  return copy;
}
