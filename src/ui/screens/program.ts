import type { SheetEdit } from '../../lifter/change-program.ts';
import { problemText } from '../../text/problem.ts';
import { questionsAgain } from '../first-question.ts';
import { markedTexts, moving } from '../list.ts';
import { type Act, type Acting, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { backBy, HELP, type KeyRow, type ScreenModule } from '../screen.ts';
import type { SheetScreen } from '../ui-state.ts';
import { FINDINGS_KEY } from './findings.ts';
import { sheetLines, sheetRows } from './sheet-lines.ts';

/** From the preview: the program, to look at and to change. */
export const PROGRAM_KEY: KeyRow = {
  keys: ['e'],
  label: 'the program',
  footer: 86,
  press: (acting) => {
    const sheet = acting.coach.editor.open();
    if ('what' in sheet) return tell(acting, problemText(sheet));
    return show(acting, { kind: 'program', sheet, chosen: 0, past: [], back: acting.screen });
  },
};

type Row = ReturnType<typeof sheetRows>[number];

const rowOf = ({ sheet, chosen }: SheetScreen): Row | undefined => sheetRows(sheet)[chosen];

/** An act on the exercise that is chosen, by its day and place. */
const onExercise =
  (
    act: (acting: Acting<SheetScreen>, day: number, exercise: number) => Outcome,
  ): Act<SheetScreen> =>
  (acting) => {
    const row = rowOf(acting.screen);
    if (!row || row.exercise === null) return tell(acting, CHOOSE_ONE);
    return act(acting, row.day, row.exercise);
  };

const CHOOSE_ONE = 'Choose a lift first.';

const isExercise = ({ screen }: Seen<SheetScreen>): true | string =>
  rowOf(screen)?.exercise === null ? CHOOSE_ONE : true;

/** The sheet after an edit, with the row chosen that `day` and `exercise` (null: the day) name. */
export function edited(
  acting: Acting,
  screen: SheetScreen,
  edit: SheetEdit,
  to: { readonly day: number; readonly exercise: number | null },
): Outcome {
  const sheet = acting.coach.editor.edit(screen.sheet, edit);
  if ('what' in sheet) return tell(acting, problemText(sheet));
  const rows = sheetRows(sheet);
  const found = rows.findIndex(({ day, exercise }) => day === to.day && exercise === to.exercise);
  const chosen = found >= 0 ? found : Math.min(screen.chosen, rows.length - 1);
  return show(acting, { ...screen, sheet, chosen, past: [...screen.past, screen] });
}

const changeSets = (by: 1 | -1) =>
  onExercise((acting, day, exercise) => {
    const at = { day, exercise };
    return edited(acting, acting.screen, { kind: 'sets', at, by }, at);
  });

/** One place up or down, into the next day at the ends of a day. */
const move = (by: 1 | -1) =>
  onExercise((acting, day, exercise) => {
    const { screen } = acting;
    const { days } = screen.sheet.program;
    const count = days[day]?.exercises.length ?? 0;
    const inside = exercise + by >= 0 && exercise + by < count;
    const target = inside ? day : day + by;
    const other = days[target];
    if (!other) return tell(acting, 'There is no day further that way.');
    if (!inside && count === 1) return tell(acting, KEEPS_ONE);
    const to = {
      day: target,
      exercise: inside ? exercise + by : by > 0 ? 0 : other.exercises.length,
    };
    return edited(acting, screen, { kind: 'move', from: { day, exercise }, to }, to);
  });

const KEEPS_ONE = 'A day keeps at least one lift.';

const takeOut = onExercise((acting, day, exercise) => {
  const { screen } = acting;
  const count = screen.sheet.program.days[day]?.exercises.length ?? 0;
  if (count === 1) return tell(acting, KEEPS_ONE);
  const left = { day, exercise: Math.min(exercise, count - 2) };
  return edited(acting, screen, { kind: 'remove', at: { day, exercise } }, left);
});

const addLift: Act<SheetScreen> = (acting) =>
  show(acting, {
    kind: 'add-lift',
    back: acting.screen,
    typed: '',
    lifts: acting.coach.editor.lifts(acting.screen.sheet, ''),
    chosen: 0,
  });

const showChanges: Act<SheetScreen> = (acting) =>
  show(acting, {
    kind: 'changes',
    back: acting.screen,
    lines: acting.coach.editor.changes(acting.screen.sheet),
    scroll: 0,
  });

const isChanged = ({ sheet }: SheetScreen): boolean => sheet.text !== sheet.before;

/** The program, day by day. */
export const PROGRAM_SCREEN: ScreenModule<SheetScreen> = {
  keys: [
    ...moving<SheetScreen>(({ screen }) => sheetRows(screen.sheet).length),
    HELP,
    backBy((acting) =>
      isChanged(acting.screen)
        ? show(acting, { kind: 'unsaved', back: acting.screen, chosen: 0 })
        : show(acting, acting.screen.back),
    ),
    { ...FINDINGS_KEY, footer: 6 },
    {
      keys: ['+', '='],
      label: 'a set more',
      when: isExercise,
      footer: 0,
      pair: 'more, fewer sets',
      press: changeSets(1),
    },
    {
      keys: ['-', '_'],
      label: 'a set less',
      when: isExercise,
      footer: 0,
      pair: 'more, fewer sets',
      press: changeSets(-1),
    },
    {
      keys: ['[', 'b'],
      label: 'move earlier',
      when: isExercise,
      footer: 2,
      pair: 'move it',
      press: move(-1),
    },
    {
      keys: [']', 'v'],
      label: 'move later',
      when: isExercise,
      footer: 2,
      pair: 'move it',
      press: move(1),
    },
    {
      keys: ['c'],
      label: 'change the answers',
      when: ({ screen }) =>
        isChanged(screen) ? 'Save what was changed first, or take it back.' : true,
      footer: 8,
      press: (acting) => show(acting, questionsAgain(acting.coach)),
    },
    { keys: ['a'], label: 'add a lift', footer: 3, press: addLift },
    { keys: ['d'], label: 'take out', when: isExercise, footer: 4, press: takeOut },
    {
      keys: ['u'],
      label: 'undo',
      when: ({ screen }) => (screen.past.length > 0 ? true : 'There is nothing to undo yet.'),
      footer: 7,
      press: (acting) => show(acting, acting.screen.past.at(-1) ?? acting.screen),
    },
    {
      keys: ['enter'],
      label: 'look and save',
      when: ({ screen }) => (isChanged(screen) ? true : 'Nothing was changed.'),
      footer: 5,
      tap: { at: 0 },
      press: showChanges,
    },
  ],
  lines: ({ screen }, columns, rows) => sheetLines(screen, columns, rows),
  spoken: ({ screen }) => markedTexts(sheetLines(screen, BESIDE_NOTHING, OPEN)),
};

/** Figures beside the days would be read between them. */
const BESIDE_NOTHING = 75;
