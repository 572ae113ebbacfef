import { readFileSync, statSync } from 'node:fs';
import type { Problem } from '../text/problem.ts';
import { type ReadProgram, readProgram } from './read-program.ts';
import { MOST_BYTES } from './yaml-traps.ts';

/** The disk as far as a program file needs it. Both throw what the system says, with its `code`. */
export interface ProgramFiles {
  readonly stat: (path: string) => { readonly isFile: boolean; readonly size: number };
  readonly read: (path: string) => Uint8Array;
}

const nodeFiles: ProgramFiles = {
  stat: (path) => {
    const found = statSync(path);
    return { isFile: found.isFile(), size: found.size };
  },
  read: (path) => readFileSync(path),
};

/**
 * Reads a program file. Every problem is a sentence; line 0 stands for the file as a whole.
 * @param parse makes a program of its text, as {@link readProgram} does
 */
export function readProgramFile(
  path: string,
  files: ProgramFiles = nodeFiles,
  parse: (text: string, file: string) => ReadProgram = readProgram,
): ReadProgram {
  const refuse = (problem: Problem): ReadProgram => ({
    ok: false,
    problems: [{ ...problem, file: path, line: 0, column: 0 }],
  });
  let bytes: Uint8Array;
  try {
    const { isFile, size } = files.stat(path);
    if (!isFile) return refuse(NOT_A_FILE);
    if (size > MOST_BYTES) return refuse(tooLong(size));
    bytes = files.read(path);
  } catch (error) {
    return refuse(unreadable(error));
  }
  try {
    return parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes), path);
  } catch (error) {
    // The decoder throws a TypeError at the first byte that is not UTF-8; nothing else here throws.
    if (error instanceof TypeError) return refuse(NOT_UTF8);
    throw error;
  }
}

const NOT_A_FILE: Problem = {
  what: 'This is not a file.',
  fix: 'Name the program file itself, such as programs/three-day.yaml.',
};

const NOT_UTF8: Problem = {
  what: 'This file is not text in UTF-8.',
  fix: 'Is it the right file? If so, save it again as UTF-8.',
};

const tooLong = (size: number): Problem => ({
  what: `The file is ${Math.ceil(size / 1024)} kB long.`,
  fix: 'A program is a page or two, 256 kB at most: is this the right file?',
});

function unreadable(error: unknown): Problem {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return (
    UNREADABLE[code] ?? {
      what: `The file cannot be read: the system says ${code || String(error)}.`,
      fix: 'Check the disk and the path.',
    }
  );
}

const UNREADABLE: Readonly<Record<string, Problem>> = {
  ENOENT: {
    what: 'There is no such file.',
    fix: 'Check the path, or name one of the shipped programs.',
  },
  ENOTDIR: {
    what: 'There is no such file: a part of the path is not a folder.',
    fix: 'Check the path.',
  },
  EACCES: {
    what: 'You may not read this file.',
    fix: 'Give yourself the right to read it, or name another.',
  },
  EISDIR: NOT_A_FILE,
};
