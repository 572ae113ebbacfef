import type { DiffLine } from '../text/line-diff.ts';
import type { Lift } from '../training/lift.ts';
import type { Sheet } from '../workbench/change-program.ts';
import type { FindingWords } from '../workbench/rules.ts';
import type { Screen } from './ui-state.ts';

/** The program, day by day; `chosen` is a row: each day is one, and each exercise. */
export interface SheetScreen {
  readonly kind: 'program';
  readonly sheet: Sheet;
  readonly chosen: number;
  /** The same before each change, the latest last. */
  readonly past: readonly SheetScreen[];
  /** The screen that it was opened from. */
  readonly back: Screen;
}

/** Screens about the program file. */
export type ProgramScreen =
  | SheetScreen
  | {
      readonly kind: 'add-lift';
      readonly back: SheetScreen;
      readonly typed: string;
      readonly lifts: readonly Lift[];
      readonly chosen: number;
    }
  | {
      readonly kind: 'changes';
      readonly back: SheetScreen;
      readonly lines: readonly DiffLine[];
      readonly scroll: number;
    }
  | { readonly kind: 'unsaved'; readonly back: SheetScreen; readonly chosen: number }
  | {
      readonly kind: 'findings';
      readonly findings: readonly FindingWords[];
      readonly file: string;
      readonly back: Screen;
      readonly scroll: number;
    };

/** Rows of a sheet in order: a day, then its exercises (null for the day's own row). */
export const sheetRows = ({ program }: Sheet) =>
  program.days.flatMap(({ exercises }, day) => [
    { day, exercise: null },
    ...exercises.map((_, exercise) => ({ day, exercise })),
  ]);
