import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { programFigures } from '../program/check/figures.ts';
import { usualExercise } from '../program/draft/drafted-exercise.ts';
import {
  addExercise,
  type ExerciseAt,
  moveExercise,
  removeExercise,
  withSets,
} from '../program/edit-program.ts';
import { fileProblemText } from '../program/file-problem.ts';
import { findLifts } from '../program/find-lifts.ts';
import type { Program } from '../program/program.ts';
import { readProgram } from '../program/read-program.ts';
import { lineDiff } from '../text/line-diff.ts';
import { type Problem, Refusal } from '../text/problem.ts';
import { programText, writeProgram } from './change-program.ts';
import { findingsOf } from './findings-of.ts';
import { lastOf } from './once.ts';
import type { Workbench } from './open-workbench.ts';
import { orProblem } from './or-problem.ts';
import type { SettingsDesk } from './past-changer.ts';
import type { ProgramDesk, Sheet, SheetEdit } from './program-desk.ts';

/** The program file as the screens ask for it. */
export function openDesk(workbench: Workbench, settings: SettingsDesk): ProgramDesk {
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
      findings: findingsOf(program, workbench.gear()),
      band: CHECK_LIMITS.weeklySets[program.aim],
    };
  };
  const known = lastOf(findingsOf);
  return {
    findings: () => {
      try {
        return known(workbench.program(), workbench.gear());
      } catch (error) {
        if (error instanceof Refusal) return [];
        throw error;
      }
    },
    open: () =>
      orProblem(() => {
        const path = workbench.programPath();
        const text = programText(path);
        return sheetOf(text, text, path);
      }),
    edit: (sheet, edit) => {
      const text = edited(sheet, edit, workbench);
      return typeof text === 'string' ? sheetOf(sheet.before, text, sheet.program.file) : text;
    },
    lifts: ({ program }, query) => findLifts(program.lifts, query, workbench.gear()),
    changes: ({ before, text }) => lineDiff(before, text),
    save: ({ before, text: after }) =>
      orProblem(() => ({ path: writeProgram(workbench, settings, { before, after }) })),
  };
}

function edited({ text, program }: Sheet, edit: SheetEdit, workbench: Workbench) {
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
      return addExercise(text, edit.at, usualExercise(lift, program.unit, workbench.gear().unit));
    }
    case 'remove':
      return removeExercise(text, edit.at);
  }
}

function setsAt({ days }: Program, { day, exercise }: ExerciseAt): number {
  const found = days[day]?.exercises[exercise];
  if (!found) return 0;
  return found.style === 'cluster' ? found.mostSets : found.sets;
}
