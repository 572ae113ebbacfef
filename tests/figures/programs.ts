import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Exercise, Program } from '../../src/program/program.ts';
import { readProgram } from '../../src/program/read-program.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Every program that holdfast ships, by file name. */
export function shippedPrograms(): Program[] {
  const folder = join(ROOT, 'programs');
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => programIn(join(folder, name)));
}

/** Those that are meant for a cut of weeks, and not for trying holdfast out. */
export const forCuts = (programs: readonly Program[]): Program[] =>
  programs.filter(({ file, aim }) => aim === 'cut' && !file.endsWith('try-out.yaml'));

/** About 20 hard sets a muscle on six days. */
export const tooMuch = (): Program => programIn(join(ROOT, 'tests/rehearsal/too-much.yaml'));

function programIn(path: string): Program {
  const read = readProgram(readFileSync(path, 'utf8'), path.slice(dirname(ROOT).length + 1));
  if (!read.ok) throw new Error(`${path}: ${read.problems.map(({ what }) => what).join(' ')}`);
  return read.program;
}

/** The program with half of its sets; what cannot be halved is rounded up and down in turn. */
export function halfOf(program: Program): Program {
  let owed = 0;
  const halved = (sets: number): number => {
    const wanted = sets / 2 + owed;
    const given = Math.max(1, Math.floor(wanted));
    owed = wanted - given;
    return given;
  };
  const half = (exercise: Exercise): Exercise =>
    exercise.style === 'cluster'
      ? { ...exercise, mostSets: Math.max(2, halved(exercise.mostSets)) }
      : { ...exercise, sets: halved(exercise.sets) };
  return {
    ...program,
    days: program.days.map((day) => ({ ...day, exercises: day.exercises.map(half) })),
  };
}
