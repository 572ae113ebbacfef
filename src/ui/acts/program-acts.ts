import { problemText } from '../../text/problem.ts';
import type { SheetEdit } from '../../workbench/change-program.ts';
import type { ActId } from '../binding.ts';
import { type Act, type Acting, ask, type Outcome, show, tell } from '../outcome.ts';
import { type SheetScreen, sheetRows } from '../ui-state.ts';

const sheetScreen = ({ model }: Acting): SheetScreen | null =>
  model.ui.screen.kind === 'program' ? model.ui.screen : null;

/** From the preview: the program, to look at and to change. */
const openProgram: Act = (acting) => {
  const sheet = acting.bench.desk.open();
  if ('what' in sheet) return tell(acting, problemText(sheet));
  return show(acting, {
    kind: 'program',
    sheet,
    chosen: 0,
    past: [],
    back: acting.model.ui.screen,
  });
};

const showFindings: Act = (acting) => {
  const back = acting.model.ui.screen;
  const open = sheetScreen(acting)?.sheet ?? acting.bench.desk.open();
  if ('what' in open) return tell(acting, problemText(open));
  const { findings, program } = open;
  return show(acting, { kind: 'findings', findings, file: program.file, back, scroll: 0 });
};

/** On a sheet's chosen row. */
const onRow =
  (
    act: (
      screen: SheetScreen,
      row: ReturnType<typeof sheetRows>[number],
      acting: Acting,
    ) => Outcome,
  ): Act =>
  (acting) => {
    const screen = sheetScreen(acting);
    const row = screen && sheetRows(screen.sheet)[screen.chosen];
    return screen && row ? act(screen, row, acting) : ask(acting);
  };

/** The sheet after an edit, with the row chosen that `day` and `exercise` (null: the day) name. */
function edited(
  acting: Acting,
  screen: SheetScreen,
  edit: SheetEdit,
  to: { readonly day: number; readonly exercise: number | null },
): Outcome {
  const sheet = acting.bench.desk.edit(screen.sheet, edit);
  if ('what' in sheet) return tell(acting, problemText(sheet));
  const rows = sheetRows(sheet);
  const found = rows.findIndex(({ day, exercise }) => day === to.day && exercise === to.exercise);
  const chosen = found >= 0 ? found : Math.min(screen.chosen, rows.length - 1);
  return show(acting, { ...screen, sheet, chosen, past: [...screen.past, screen] });
}

const takeBack: Act = (acting) => {
  const before = sheetScreen(acting)?.past.at(-1);
  return before ? show(acting, before) : ask(acting);
};

const changeSets = (by: 1 | -1): Act =>
  onRow((screen, { day, exercise }, acting) => {
    if (exercise === null) return tell(acting, CHOOSE_ONE);
    const at = { day, exercise };
    return edited(acting, screen, { kind: 'sets', at, by }, at);
  });

const CHOOSE_ONE = 'Choose a lift first.';

/** One place up or down, into the next day at the ends of a day. */
const move = (by: 1 | -1): Act =>
  onRow((screen, { day, exercise }, acting) => {
    if (exercise === null) return tell(acting, CHOOSE_ONE);
    const { days } = screen.sheet.program;
    const count = days[day]?.exercises.length ?? 0;
    const inside = exercise + by >= 0 && exercise + by < count;
    const target = inside ? day : day + by;
    const other = days[target];
    if (!other) return tell(acting, 'There is no day further that way.');
    if (!inside && count === 1) return tell(acting, 'A day keeps at least one lift.');
    const to = {
      day: target,
      exercise: inside ? exercise + by : by > 0 ? 0 : other.exercises.length,
    };
    return edited(acting, screen, { kind: 'move', from: { day, exercise }, to }, to);
  });

const takeOut = onRow((screen, { day, exercise }, acting) => {
  if (exercise === null) return tell(acting, CHOOSE_ONE);
  const at = { day, exercise };
  const count = screen.sheet.program.days[day]?.exercises.length ?? 0;
  if (count === 1) return tell(acting, 'A day keeps at least one lift.');
  const left = { day, exercise: Math.min(exercise, count - 2) };
  return edited(acting, screen, { kind: 'remove', at }, left);
});

const addLift = onRow((screen, _, acting) =>
  show(acting, {
    kind: 'add-lift',
    back: screen,
    typed: '',
    lifts: acting.bench.desk.lifts(screen.sheet, ''),
    chosen: 0,
  }),
);

const choice =
  (by: 1 | -1): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    const count =
      screen.kind === 'program'
        ? sheetRows(screen.sheet).length
        : screen.kind === 'add-lift'
          ? screen.lifts.length
          : 0;
    if (count === 0 || !('chosen' in screen)) return ask(acting);
    return show(acting, { ...screen, chosen: (screen.chosen + by + count) % count });
  };

const showChanges = onRow((screen, _, acting) =>
  show(acting, {
    kind: 'changes',
    back: screen,
    lines: acting.bench.desk.changes(screen.sheet),
    scroll: 0,
  }),
);

const leaveProgram: Act = (acting) => {
  const screen = sheetScreen(acting);
  if (!screen) return ask(acting);
  return screen.sheet.text === screen.sheet.before
    ? show(acting, screen.back)
    : show(acting, { kind: 'unsaved', back: screen, chosen: 0 });
};

const write: Act = (acting) => {
  const { screen } = acting.model.ui;
  return screen.kind === 'changes'
    ? ask(acting, { do: 'save-program', sheet: screen.back.sheet })
    : ask(acting);
};

const typed = (acting: Acting, text: string): Outcome => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'add-lift') return ask(acting);
  const lifts = acting.bench.desk.lifts(screen.back.sheet, text);
  return show(acting, { ...screen, typed: text, lifts, chosen: 0 });
};

/** Any text key where a lift is looked for. */
export function typeLift(acting: Acting, text: string): Outcome {
  const { screen } = acting.model.ui;
  return screen.kind === 'add-lift'
    ? typed(acting, (screen.typed + text).slice(0, 40))
    : ask(acting);
}

const rubOut: Act = (acting) => {
  const { screen } = acting.model.ui;
  return screen.kind === 'add-lift' ? typed(acting, screen.typed.slice(0, -1)) : ask(acting);
};

const takeLift: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'add-lift') return ask(acting);
  const lift = screen.lifts[screen.chosen];
  const row = sheetRows(screen.back.sheet)[screen.back.chosen];
  if (!lift || !row) return tell(acting, 'There is nothing to choose.');
  const at = { day: row.day, exercise: row.exercise === null ? 0 : row.exercise + 1 };
  return edited(acting, screen.back, { kind: 'add', at, lift: lift.key }, at);
};

/** What keys do anywhere about the program file. */
export const PROGRAM_ACTS = {
  program: openProgram,
  findings: showFindings,
  earlier: move(-1),
  later: move(1),
  'add-lift': addLift,
} satisfies Partial<Record<ActId, Act>>;

/** The same keys as elsewhere, on the program itself. */
export const SHEET_ACTS = {
  more: changeSets(1),
  less: changeSets(-1),
  'leave-out': takeOut,
  'take-back': takeBack,
  save: showChanges,
  'choice-up': choice(-1),
  'choice-down': choice(1),
  back: leaveProgram,
} satisfies Partial<Record<ActId, Act>>;

export const CHANGES_ACTS = { choose: write } satisfies Partial<Record<ActId, Act>>;

export const ADD_LIFT_ACTS = {
  choose: takeLift,
  'rub-out': rubOut,
  'choice-up': choice(-1),
  'choice-down': choice(1),
} satisfies Partial<Record<ActId, Act>>;
