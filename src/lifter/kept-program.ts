import { join } from 'node:path';
import type { Files } from '../journal/disk/files.ts';
import { keptHead, readKept, writeKept } from '../journal/disk/kept-file.ts';
import { CATALOGUE } from '../program/catalogue.ts';
import type { Program } from '../program/program.ts';
import { type ReadProgram, readProgram } from '../program/read-program.ts';
import type { Lift } from '../training/lift.ts';

/**
 * Reads the text of a program file, and keeps what came of it in the cache folder: the same text need
 * not be parsed at each start, which would be a quarter of it.
 */
export function keptProgram(
  files: Files,
  cacheDir: string,
  random: () => string,
): (text: string, file: string) => ReadProgram {
  const path = join(cacheDir, 'program.kept');
  return (text, file) => {
    const head = keptHead(import.meta.url, text);
    const program = readKept(files, path, head, (kept) => fromText(kept, file));
    if (program !== null) return { ok: true, program, warnings: [] };
    const read = readProgram(text, file);
    // What is odd in a file is told each time.
    if (read.ok && read.warnings.length === 0) {
      writeKept(files, { folder: cacheDir, path, random }, head, toText(read.program));
    }
    return read;
  };
}

/**
 * Lifts stand for themselves by their keys, and those of the catalogue are not written down; one that an
 * exercise does otherwise, as `sides:` has it, is.
 */
function toText({ lifts, ...program }: Program): string {
  const own = [...lifts].filter(([key, lift]) => CATALOGUE.get(key) !== lift);
  const days = program.days.map((day) => ({
    ...day,
    exercises: day.exercises.map(({ lift, ...exercise }) => ({
      ...exercise,
      lift: lifts.get(lift.key) === lift ? lift.key : lift,
    })),
  }));
  return JSON.stringify({ ...program, days, own });
}

type WrittenProgram = Omit<Program, 'lifts' | 'days'> & {
  readonly own: readonly (readonly [string, Lift])[];
  readonly days: readonly (Omit<Program['days'][number], 'exercises'> & {
    readonly exercises: readonly (Record<string, unknown> & { readonly lift: string | Lift })[];
  })[];
};

function fromText(text: string, file: string): Program {
  const { own, days, ...program } = JSON.parse(text) as WrittenProgram;
  const lifts = new Map([...CATALOGUE, ...own]);
  return {
    ...program,
    file,
    lifts,
    days: days.map((day) => ({
      ...day,
      exercises: day.exercises.map((exercise) => ({
        ...exercise,
        lift: typeof exercise.lift === 'string' ? lifts.get(exercise.lift) : exercise.lift,
      })) as unknown as Program['days'][number]['exercises'],
    })),
  };
}
