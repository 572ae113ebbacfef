import { join, sep } from 'node:path';
import { JOURNAL_FOLDER } from '../journal/disk/file-names.ts';
import type { Ports } from '../lifter/ports.ts';
import { foldersFor } from '../settings/folders.ts';

/** What a prompt or a status bar asks time and again. */
const ASKED_AGAIN: readonly string[] = ['today', 'today --json'];

/** What was printed in answer to a command line, and all that it was worked out of. */
export interface KeptAnswer {
  /** The command line. */
  readonly asked: string;
  /** Path of the program file that it was worked out of. */
  readonly program: string;
  /** See {@link sourcesOf}. */
  readonly sources: string;
  readonly said: string;
}

/** Where the last one lies; it may be deleted. */
export const keptAnswerPath = (ports: Ports): string => join(foldersOf(ports).cache, 'answer.kept');

/** May the answer to this command line be kept? Not where a program was asked for. */
export const mayBeKept = ({ env, build }: Ports, argv: readonly string[]): boolean =>
  build !== null && !env.HOLDFAST_PROGRAM && ASKED_AGAIN.includes(argv.join(' '));

/**
 * What the same command line printed before, where nothing that it was worked out of is another: then
 * the past need not be read, nor what reads it be loaded. Null where that is not so.
 */
export function keptAnswer(ports: Ports, argv: readonly string[]): string | null {
  if (!mayBeKept(ports, argv)) return null;
  try {
    const bytes = ports.files.read(keptAnswerPath(ports));
    // What a power cut leaves of it is cut short or holds zeroes, and no JSON does.
    const kept = bytes && (JSON.parse(new TextDecoder().decode(bytes)) as KeptAnswer);
    if (kept?.asked !== argv.join(' ')) return null;
    return sourcesOf(ports, kept.program).text === kept.sources ? kept.said : null;
  } catch {
    // It is worked out anew, and what is wrong is told there.
    return null;
  }
}

/** Of files of months longer ago only their coming and going is looked at. */
const MONTHS_LOOKED_AT = 24;

/**
 * All that the answer of today depends on: the build, the local day, and each file of the lifter's by
 * name, size and time, none of them read. Files of more than two years ago are many, nothing of ours
 * writes into them, and today goes by later sessions: for them stands the time of their folder, which
 * changes when one comes or goes.
 * @param program path of the program file
 * @returns it as text, and when the newest of the files was written to, in epoch milliseconds
 */
export function sourcesOf(
  ports: Ports,
  program: string,
): { readonly text: string; readonly newest: number } {
  const { files, clock, build } = ports;
  const { data, config } = foldersOf(ports);
  const { wall } = clock.read();
  const zone = clock.zone(wall);
  const day = new Date(wall + zone * 60_000);
  const lines = [`${build}`, day.toISOString().slice(0, 10), `${zone}`, data];
  let newest = 0;
  const add = (path: string, name = path): void => {
    const about = files.about(path);
    newest = Math.max(newest, about?.modified ?? 0);
    lines.push(`${name} ${about?.size} ${about?.modified} ${about?.id}`);
  };
  const addAll = (folder: string): void => {
    lines.push(folder);
    for (const { name } of files.list(folder)) add(`${folder}${sep}${name}`, name);
  };
  add(program);
  addAll(config);
  const journal = join(data, JOURNAL_FOLDER);
  day.setUTCMonth(day.getUTCMonth() - MONTHS_LOOKED_AT, 1);
  const since = day.toISOString().slice(0, 7);
  for (const { name, kind } of files.list(journal)) {
    const isOld = /^\d{4}-\d\d$/.test(name) && name < since;
    if (kind === 'folder') (isOld ? add : addAll)(`${journal}${sep}${name}`);
  }
  return { text: lines.join('\n'), newest };
}

const foldersOf = (ports: Ports) => foldersFor({ ...ports, dataOption: null });
