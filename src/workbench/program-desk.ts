import type { ProgramFigures } from '../program/check/figures.ts';
import type { ExerciseAt } from '../program/edit-program.ts';
import type { Program } from '../program/program.ts';
import type { DiffLine } from '../text/line-diff.ts';
import type { Problem } from '../text/problem.ts';
import type { Lift } from '../training/lift.ts';
import type { FindingWords } from './findings-of.ts';

/** A program file that is being changed. Nothing is written before it is saved. */
export interface Sheet {
  /** As it lies on the disk. */
  readonly before: string;
  readonly text: string;
  readonly program: Program;
  readonly figures: ProgramFigures;
  readonly findings: readonly FindingWords[];
  /** Hard sets a week, fewest and most, by the program's aim. */
  readonly band: readonly [low: number, high: number];
}

/** One change of a sheet. */
export type SheetEdit =
  | { readonly kind: 'sets'; readonly at: ExerciseAt; readonly by: 1 | -1 }
  | { readonly kind: 'move'; readonly from: ExerciseAt; readonly to: ExerciseAt }
  | { readonly kind: 'add'; readonly at: ExerciseAt; readonly lift: string }
  | { readonly kind: 'remove'; readonly at: ExerciseAt };

/** What the screens ask of the program file. Only `save` writes. */
export interface ProgramDesk {
  /** What the check says of the program in use; none where it cannot be read. */
  readonly findings: () => readonly FindingWords[];
  readonly open: () => Sheet | Problem;
  readonly edit: (sheet: Sheet, edit: SheetEdit) => Sheet | Problem;
  /** Lifts whose name or muscles every word of `query` fits, those the gear can load first. */
  readonly lifts: (sheet: Sheet, query: string) => readonly Lift[];
  readonly changes: (sheet: Sheet) => readonly DiffLine[];
  /** Into the lifter's own copy; gives its path. */
  readonly save: (sheet: Sheet) => { readonly path: string } | Problem;
}
