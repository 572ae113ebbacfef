import { safeText } from '../../text/safe-text.ts';
import { keyWords } from '../../text/words.ts';
import { BLANK, type Line, line, span, spread } from '../line.ts';
import { markedTexts, moving } from '../list.ts';
import { type Act, type Acting, ask, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { OPEN, titled } from '../page.ts';
import { backBy, type ScreenModule, textTyped } from '../screen.ts';
import type { Screen, SheetScreen } from '../ui-state.ts';
import { scrollTo, windowOf } from '../window.ts';
import { edited } from './program.ts';
import { sheetRows } from './sheet-lines.ts';

type AddLift = Extract<Screen, { kind: 'add-lift' }>;

/** Lifts to choose from while a name is typed. */
function addLiftLines({ screen }: Seen<AddLift>, columns: number, rows: number): Line[] {
  const { typed, lifts, chosen, back } = screen;
  const head = [
    ...titled('Add a lift', `to ${dayName(back)}`, columns),
    [span('> '), span(safeText(typed), 'strong'), span('_', 'drawn')],
    BLANK,
  ];
  const list =
    lifts.length === 0
      ? [line('No lift is called so.')]
      : lifts.map(({ name, trains }, at) => {
          const direct = Object.entries(trains)
            .filter(([, share]) => share === 1)
            .map(([muscle]) => keyWords(muscle));
          const mark = at === chosen ? '▸ ' : '  ';
          return spread(
            [span(mark, 'drawn'), span(safeText(name), at === chosen ? 'chosen' : 'plain')],
            [span(direct.join(', '))],
            columns,
          );
        });
  const room = Math.max(1, rows - head.length);
  return windowOf([...head, ...windowOf(list, room, scrollTo(chosen, chosen + 1, room))], rows, 0);
}

function dayName({ sheet, chosen }: SheetScreen): string {
  let row = -1;
  for (const { name, exercises } of sheet.program.days) {
    row += 1 + exercises.length;
    if (chosen <= row) return safeText(name);
  }
  return '';
}

const LONGEST_NAME = 40;

function typed(acting: Acting<AddLift>, text: string): Outcome {
  const { screen, coach } = acting;
  const name = text.slice(0, LONGEST_NAME);
  const lifts = coach.editor.lifts(screen.back.sheet, name);
  return show(acting, { ...screen, typed: name, lifts, chosen: 0 });
}

const take: Act<AddLift> = (acting) => {
  const { lifts, chosen, back } = acting.screen;
  const lift = lifts[chosen];
  const row = sheetRows(back.sheet)[back.chosen];
  if (!lift || !row) return tell(acting, 'There is nothing to choose.');
  const at = { day: row.day, exercise: row.exercise === null ? 0 : row.exercise + 1 };
  return edited(acting, back, { kind: 'add', at, lift: lift.key }, at);
};

export const ADD_LIFT_SCREEN: ScreenModule<AddLift> = {
  keys: [
    ...moving<AddLift>(({ screen }) => screen.lifts.length),
    backBy<AddLift>((acting) => show(acting, acting.screen.back), { keys: ['esc'] }),
    { keys: ['enter'], label: 'add it', footer: 0, tap: { at: 0 }, press: take },
    {
      keys: ['backspace', 'delete'],
      label: 'rub out',
      press: (acting) => typed(acting, acting.screen.typed.slice(0, -1)),
    },
  ],
  lines: addLiftLines,
  spoken: (seen) => markedTexts(addLiftLines(seen, OPEN, OPEN)),
  otherKey: (acting, key) => {
    const text = textTyped(key);
    return text === null ? ask(acting) : typed(acting, acting.screen.typed + text);
  },
};
