import { readFileSync } from 'node:fs';
import type { ProgramChange } from '../cut/finding.ts';
import { withSets } from '../program/edit-program.ts';
import type { Program } from '../program/program.ts';
import { writeProgramFile } from '../program/write-file.ts';
import { lineDiff } from '../text/line-diff.ts';
import type { Problem } from '../text/problem.ts';
import type { Workbench } from './open-workbench.ts';
import type { ProgramEdit } from './watch.ts';

/** What some changes do to the lifter's own copy of the program. They are not written yet. */
export function programEdit(
  workbench: Workbench,
  changes: readonly ProgramChange[],
): ProgramEdit | Problem {
  // Of a shipped program the lifter's own copy: that is what would be written.
  const path = workbench.ownProgramPath();
  const before = readFileSync(path, 'utf8');
  const after = changed(before, workbench.program(), changes);
  return typeof after === 'string' ? { path, lines: lineDiff(before, after) } : after;
}

/** Writes the changes into the lifter's own copy of the program; gives its path. */
export function changeProgram(
  workbench: Workbench,
  changes: readonly ProgramChange[],
): string | Problem {
  const path = workbench.ownProgramPath();
  const after = changed(readFileSync(path, 'utf8'), workbench.program(), changes);
  if (typeof after !== 'string') return after;
  const { wall } = workbench.ports.clock.read();
  const problem = writeProgramFile(path, after, `${process.pid}-${wall}`);
  workbench.forgetProgram();
  return problem ?? path;
}

function changed(
  text: string,
  { days }: Program,
  changes: readonly ProgramChange[],
): string | Problem {
  return changes.reduce<string | Problem>((before, { day, index, to }) => {
    if (typeof before !== 'string') return before;
    const at = { day: days.findIndex(({ name }) => name === day), exercise: index };
    return withSets(before, at, to);
  }, text);
}
