import { join, sep } from 'node:path';
import { JOURNAL_FOLDER } from '../journal/disk/file-names.ts';
import type { Ports } from '../lifter/ports.ts';
import { foldersFor } from '../settings/folders.ts';
import { environment } from '../terminal/environment.ts';

/** What a prompt or a status bar asks time and again. */
const ASKED_AGAIN: readonly string[] = ['today', 'today --json'];

/** What is kept of an earlier run, and all that it was worked out of. */
export interface KeptAnswer {
  /** See {@link AskedAgain.words}. */
  readonly asked: string;
  /** Path of the program file that it was worked out of. */
  readonly program: string;
  /** See {@link sourcesOf}. */
  readonly sources: string;
  readonly said: string;
}

/** What is asked for on a command line whose answer may be kept. */
export interface AskedAgain {
  /** What was printed, or what the screens begin with. */
  readonly kind: 'answer' | 'picture';
  /** All of the question that the answer depends on. */
  readonly words: string;
}

/** Where the last one lies; it may be deleted. */
export const keptAnswerPath = (ports: Ports, kind: AskedAgain['kind']): string =>
  join(foldersOf(ports).cache, `${kind}.kept`);

/** Null where no answer may be kept, as where a program was asked for. */
export function askedAgain(ports: Ports, argv: readonly string[]): AskedAgain | null {
  const { env, build, demoFolder } = ports;
  if (build === null || env.HOLDFAST_PROGRAM || demoFolder !== undefined) return null;
  const line = argv.join(' ');
  if (ASKED_AGAIN.includes(line)) return { kind: 'answer', words: line };
  return argv.length === 0 ? screensAsked(ports) : null;
}

/** What decides how the screens are drawn, beside what the lifter set. */
const LOOKS = [
  ...['TERM', 'COLORTERM', 'TERM_PROGRAM', 'NO_COLOR', 'FORCE_COLOR'],
  ...['LC_ALL', 'LC_CTYPE', 'LANG'],
] as const;

function screensAsked({ env, stdin, stdout }: Ports): AskedAgain | null {
  const { interactive, screenReader } = environment({
    env,
    argv: [],
    stdinIsTerminal: stdin.isTTY === true,
    stdoutIsTerminal: stdout.isTTY === true,
  });
  if (!interactive || screenReader) return null;
  const looks = LOOKS.map((name) => `${name}=${env[name] ?? ''}`);
  return { kind: 'picture', words: [stdout.columns, stdout.rows, ...looks].join(' ') };
}

/**
 * What was kept of the same question, where nothing that it was worked out of is another: then the past
 * need not be read, nor what reads it be loaded. Null where that is not so.
 */
export function keptAnswer(ports: Ports, { kind, words }: AskedAgain): string | null {
  try {
    const bytes = ports.files.read(keptAnswerPath(ports, kind));
    // What a power cut leaves of it is cut short or holds zeroes, and no JSON does.
    const kept = bytes && (JSON.parse(new TextDecoder().decode(bytes)) as KeptAnswer);
    if (kept?.asked !== words || typeof kept.said !== 'string') return null;
    return sourcesOf(ports, kept.program).text === kept.sources ? kept.said : null;
  } catch {
    // It is worked out anew, and what is wrong is told there.
    return null;
  }
}

/** Of files of months longer ago only their coming and going is looked at. */
const MONTHS_LOOKED_AT = 2;

/**
 * All that the answer of today depends on: the build, the local day, and each file of the lifter's by
 * name, size and time, none of them read. Files of earlier months are many, and nothing of ours writes
 * into them; what brings another in their place makes it anew. For them stands the time of their
 * folder, which changes when one comes or goes.
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
