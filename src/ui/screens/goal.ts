import type { Coach } from '../../lifter/coach.ts';
import type { GoalKey } from '../../program/edit-program.ts';
import type { Program } from '../../program/program.ts';
import { problemText } from '../../text/problem.ts';
import { massNumber } from '../../training/mass.ts';
import { BLANK, type Line, paragraph, span } from '../line.ts';
import { type Act, type Acting, ask, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { OPEN, titled } from '../page.ts';
import { backBy, HELP, type ScreenModule, typing } from '../screen.ts';
import { reviewScreen } from '../screen-after.ts';
import { typedTexts } from '../spoken/spoken-words.ts';
import type { Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';

type Goal = Extract<Screen, { kind: 'goal' }>;

const FIELDS: readonly GoalKey[] = ['goal_weight', 'goal_date', 'rate'];

/** Is there a cut that can be led somewhere? Else why not. */
export function mayAim({ editor }: Pick<Coach, 'editor'>): true | string {
  const sheet = editor.open();
  return 'what' in sheet || sheet.program.aim === 'cut' ? true : 'This program is for no cut.';
}

/** The goal as the program has it; the sentence why it cannot be read. */
export function goalScreen({ coach }: Pick<Seen, 'coach'>): Goal | string {
  const sheet = coach.editor.open();
  if ('what' in sheet) return problemText(sheet);
  const { program } = sheet;
  return {
    kind: 'goal',
    sheet,
    field: 'goal_weight',
    typed: writtenIn(program),
    words: coach.lookBack.leadsTo(program),
  };
}

const writtenIn = ({ goal: { mass, date }, rate, unit }: Program): Goal['typed'] => ({
  goal_weight: mass === null ? '' : massNumber(mass, unit),
  goal_date: date ?? '',
  rate: rate[0] === rate[1] ? `${rate[0]}` : `${rate[0]}-${rate[1]}`,
});

const says = (field: GoalKey, { unit }: Program): string =>
  ({
    goal_weight: `${unit} of body weight`,
    goal_date: 'day, such as 2027-03-01',
    rate: '% of body weight a week',
  })[field];

function lines({ screen }: Seen<Goal>, columns: number): Line[] {
  const { sheet, field, typed, words } = screen;
  return [
    ...titled(
      'What the cut leads to',
      'A weight, a day, or both; what is empty is no goal.',
      columns,
    ),
    ...FIELDS.flatMap((each) => {
      const isHere = each === field;
      const [first = BLANK, ...more] = paragraph(says(each, sheet.program), columns - 14);
      return [
        [
          span(isHere ? '▸ ' : '  ', 'drawn'),
          span(`${typed[each]}${isHere ? '_' : ''}`.padEnd(12), isHere ? 'strong' : 'plain'),
          ...first,
        ],
        ...more.map((one) => [span(' '.repeat(14)), ...one]),
      ];
    }),
    BLANK,
    ...words.flatMap((text) => paragraph(text, columns)),
  ];
}

/** The program with what is typed; the sentence why there is none. */
function written({ coach, screen }: Acting<Goal>) {
  return FIELDS.reduce<Goal['sheet'] | string>((sheet, key) => {
    if (typeof sheet === 'string') return sheet;
    const text = screen.typed[key];
    if (text === writtenIn(screen.sheet.program)[key]) return sheet;
    const value = text === '' ? null : text;
    const next = coach.editor.edit(sheet, { kind: 'head', key, value });
    return 'what' in next ? UNREAD[key] : next;
  }, screen.sheet);
}

const UNREAD: Readonly<Record<GoalKey, string>> = {
  goal_weight: 'Type a body weight, such as 75.',
  goal_date: 'Type a day as 2027-03-01.',
  rate: 'Type percent a week, such as 0.5-0.8; at most 2.',
};

function typedAs(acting: Acting<Goal>, text: string): Outcome {
  const { screen } = acting;
  const next = { ...screen, typed: { ...screen.typed, [screen.field]: text } };
  const sheet = written({ ...acting, screen: next });
  const words = typeof sheet === 'string' ? [] : acting.coach.lookBack.leadsTo(sheet.program);
  return show(acting, { ...next, words });
}

const { type, rubOut } = typing<Goal>(
  ['.', ',', '-'],
  'type the number',
  (acting) => {
    const { screen, name } = acting;
    const text = screen.typed[screen.field] + (name === ',' ? '.' : name);
    return text.length > 10 ? ask(acting) : typedAs(acting, text);
  },
  (acting) => typedAs(acting, acting.screen.typed[acting.screen.field].slice(0, -1)),
);

const turn =
  (by: 1 | -1): Act<Goal> =>
  (acting) => {
    const at = FIELDS.indexOf(acting.screen.field) + by;
    return show(acting, {
      ...acting.screen,
      field: FIELDS.at(at % FIELDS.length) ?? 'goal_weight',
    });
  };

/** Written into the program, where an editor would write it. */
const keep: Act<Goal> = (acting) => {
  const sheet = written(acting);
  if (typeof sheet === 'string') return tell(acting, sheet);
  if (sheet.text === sheet.before) return show(acting, reviewScreen(acting.coach));
  return ask(acting, { do: 'save-program', sheet, to: 'review' });
};

export const GOAL_SCREEN: ScreenModule<Goal> = {
  keys: [
    type,
    rubOut,
    { keys: ['enter', 'space'], label: 'write it', footer: 0, tap: { at: 0 }, press: keep },
    {
      keys: ['down', 'right', 'tab'],
      label: 'next number',
      footer: 2,
      tap: { at: 2, says: 'NEXT' },
      press: turn(1),
    },
    { keys: ['up', 'left', 'shift-tab'], label: 'number before', press: turn(-1) },
    HELP,
    backBy<Goal>((acting) => show(acting, reviewScreen(acting.coach))),
  ],
  lines: (seen, columns, rows) => windowOf(lines(seen, columns), rows, 0),
  spoken: (seen) => typedTexts(lines(seen, OPEN), seen.screen.typed[seen.screen.field]),
};
