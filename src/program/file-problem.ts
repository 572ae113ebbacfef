import { type Problem, problemText } from '../text/problem.ts';
import type { Place } from './program.ts';

/** What is wrong with a program file, and where. Line 0 means the file as a whole. */
export interface FileProblem extends Problem, Place {
  readonly file: string;
}

/** `plan.yaml:12:9: reps: 99 is too many: 50 at most. Write …` */
export function fileProblemText(problem: FileProblem): string {
  const { file, line, column } = problem;
  const place = line === 0 ? file : `${file}:${line}:${column}`;
  return `${place}: ${problemText(problem)}`;
}
