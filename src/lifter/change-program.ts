import { accessSync, constants, readFileSync, statSync } from 'node:fs';
import type { ProgramChange, SetsChange } from '../cut/finding.ts';
import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { type ProgramFigures, programFigures } from '../program/check/figures.ts';
import { usualExercise } from '../program/draft/drafted-exercise.ts';
import {
  addExercise,
  type ExerciseAt,
  type HeadKey,
  moveExercise,
  removeExercise,
  withHead,
  withSets,
} from '../program/edit-program.ts';
import { fileProblemText } from '../program/file-problem.ts';
import { findLifts } from '../program/find-lifts.ts';
import { type Program, setsOf } from '../program/program.ts';
import { readProgram } from '../program/read-program.ts';
import { writeWholeFile } from '../program/write-file.ts';
import { diskSentence } from '../text/disk-words.ts';
import { type DiffLine, lineDiff } from '../text/line-diff.ts';
import { lastOf } from '../text/once.ts';
import { orProblem, type Problem, Refusal } from '../text/problem.ts';
import type { Lift } from '../training/lift.ts';
import type { Lifter } from './open-lifter.ts';
import type { SettingsKeeper } from './ports.ts';
import { rememberedProgram, toRemember } from './program-choice.ts';
import { type FindingWords, findingsOf } from './rules.ts';

/** The program file as the screens ask for it. */
export function openProgramEditor(lifter: Lifter, settings: SettingsKeeper): ProgramEditor {
  const sheetOf = (before: string, text: string, path: string): Sheet | Problem => {
    const read = readProgram(text, path);
    if (!read.ok) {
      const [problem] = read.problems;
      return { what: problem ? fileProblemText(problem) : 'The program cannot be read.' };
    }
    const { program } = read;
    return {
      before,
      text,
      program,
      figures: programFigures(program),
      findings: findingsOf(program, lifter.gear()),
      band: CHECK_LIMITS.weeklySets[program.aim],
    };
  };
  const known = lastOf(findingsOf);
  return {
    findings: () => {
      try {
        return known(lifter.program(), lifter.gear());
      } catch (error) {
        if (error instanceof Refusal) return [];
        throw error;
      }
    },
    open: () =>
      orProblem(() => {
        const path = lifter.programPath();
        const text = programText(path);
        return sheetOf(text, text, path);
      }),
    edit: (sheet, edit) => {
      const text = edited(sheet, edit, lifter);
      return typeof text === 'string' ? sheetOf(sheet.before, text, sheet.program.file) : text;
    },
    lifts: ({ program }, query) => findLifts(program.lifts, query, lifter.gear()),
    changes: ({ before, text }) => lineDiff(before, text),
    save: ({ before, text: after }) =>
      orProblem(() => ({ path: writeProgram(lifter, settings, { before, after }) })),
  };
}

function edited({ text, program }: Sheet, edit: SheetEdit, lifter: Lifter) {
  switch (edit.kind) {
    case 'sets': {
      const sets = setsAt(program, edit.at) + edit.by;
      return sets < 1
        ? { what: 'One set is the least; d takes the lift out.' }
        : withSets(text, edit.at, sets);
    }
    case 'move':
      return moveExercise(text, edit.from, edit.to);
    case 'add': {
      const lift = program.lifts.get(edit.lift);
      if (!lift) return { what: `There is no lift ${edit.lift}.` };
      return addExercise(text, edit.at, usualExercise(lift, program.unit, lifter.gear().unit));
    }
    case 'remove':
      return removeExercise(text, edit.at);
    case 'head':
      return withHead(text, edit.key, edit.value);
  }
}

function setsAt({ days }: Program, { day, exercise }: ExerciseAt): number {
  const found = days[day]?.exercises[exercise];
  if (!found) return 0;
  return found.style === 'cluster' ? found.mostSets : found.sets;
}

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
  | { readonly kind: 'remove'; readonly at: ExerciseAt }
  /** Null takes the key out. */
  | { readonly kind: 'head'; readonly key: HeadKey; readonly value: string | null };

/** What the screens ask of the program file. Only `save` writes. */
export interface ProgramEditor {
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

/** @throws Refusal when the file is gone or cannot be read. */
function programText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new Refusal({
      what: `The program ${path} cannot be read any more.`,
      why: diskSentence(error),
      fix: 'Put it back, or name another with --program.',
    });
  }
}

/**
 * What some changes do to the program in use. They are not written yet.
 * @throws Refusal when the text holds something else by now where a change belongs.
 */
export function programEdit(lifter: Lifter, changes: readonly ProgramChange[]): ProgramEdit {
  const before = programText(lifter.programPath());
  const path = lifter.ownProgramPath();
  if (programText(path) !== before) throw new Refusal(otherCopy(path));
  const where: string[] = [];
  const after = changes.reduce((text, change) => {
    const read = readProgram(text, path);
    if (!read.ok)
      throw new Refusal(...read.problems.map((each) => ({ what: fileProblemText(each) })));
    const done = changed(text, read.program, change);
    if (!done) {
      lifter.forgetProgram();
      throw new Refusal(CHANGED_MEANWHILE);
    }
    where.push(done.where);
    if (typeof done.text !== 'string') throw new Refusal(done.text);
    return done.text;
  }, before);
  return { path, before, after, where, lines: lineDiff(before, after) };
}

/** The text with one number changed, and where; null where the program says something else by now. */
function changed(text: string, program: Program, change: ProgramChange) {
  const { from, to } = change;
  if (change.key === 'days_per_week') {
    return program.daysPerWeek === from
      ? { where: `${from} → ${to} days a week.`, text: withHead(text, change.key, `${to}`) }
      : null;
  }
  const at = placeOf(program, change);
  return at
    ? { where: `${change.day}, ${at.name}: ${from} → ${to} sets.`, text: withSets(text, at, to) }
    : null;
}

/** The very exercise that a change names, as the text has it now. */
function placeOf({ days }: Program, { day: name, index: exercise, lift, from }: SetsChange) {
  const day = days.findIndex((each) => each.name === name);
  const found = days[day]?.exercises[exercise];
  return found?.lift.key === lift && setsOf(found) === from
    ? { day, exercise, name: found.lift.name }
    : null;
}

/**
 * The one way into a program file: writes `after` into the lifter's own copy, where `before` is what
 * lies there, and goes on with that copy. Gives its path.
 * @throws Refusal when nothing was written.
 */
export function writeProgram(
  lifter: Lifter,
  settings: SettingsKeeper,
  { before, after }: { readonly before: string; readonly after: string },
): string {
  const shown = lifter.programPath();
  const path = lifter.ownProgramPath();
  if (programText(path) !== before) {
    lifter.forgetProgram();
    throw new Refusal(path === shown ? CHANGED_MEANWHILE : otherCopy(path));
  }
  refuseReadOnly(path);
  const problem = writeWholeFile(path, after, `${process.pid}-${lifter.ports.clock.read().wall}`);
  if (problem) throw new Refusal(problem);
  // What was asked for by name on the command line is no choice for ever, but its own copy is.
  const now = settings.now();
  const { folders } = lifter;
  if (path !== shown || rememberedProgram(now, folders) === shown) {
    settings.keep(toRemember(path, now, folders));
  }
  lifter.forgetProgram();
  return path;
}

/** A new file takes the place of the old one, so the system alone would not ask whether it may be written. */
function refuseReadOnly(path: string): void {
  try {
    accessSync(path, constants.W_OK);
    if ((statSync(path).mode & 0o222) !== 0) return;
  } catch {
    // Told below.
  }
  throw new Refusal({
    what: `${path} is protected against writing, so nothing was written.`,
    fix: 'Allow writing to it, or copy it and name the copy with --program.',
  });
}

const CHANGED_MEANWHILE: Problem = {
  what: 'The file was changed by another program meanwhile, so nothing was written.',
  fix: 'Go back and look at it again.',
};

const otherCopy = (path: string): Problem => ({
  what: `Your own copy of this program, ${path}, holds another text, so nothing was written.`,
  fix: 'Name that file with --program to go on with it, or move it away.',
});

/** What taking an advice does to the program file. */
export interface ProgramEdit {
  readonly path: string;
  /** The text as it was shown, and as it will be. */
  readonly before: string;
  readonly after: string;
  /** Day, lift and numbers of each change, as the text has them. */
  readonly where: readonly string[];
  readonly lines: readonly DiffLine[];
}
