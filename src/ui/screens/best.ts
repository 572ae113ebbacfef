import { MOST_REPS_OF_BEST } from '../../program/draft/wishes.ts';
import { basisOf } from '../../training/lift.ts';
import { massOf, readQuantity } from '../../training/mass.ts';
import { BLANK, type Line, paragraph, span } from '../line.ts';
import { type Act, type Acting, ask, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { titled } from '../page.ts';
import { backBy, HELP, type ScreenModule, typing } from '../screen.ts';
import type { QuestionScreen, Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';
import { BASIS_WORDS } from './load.ts';

type Best = Extract<Screen, { kind: 'best' }>;

/** A recent best of one lift: load and reps of one set. */
function lines({ screen }: Seen<Best>, columns: number): Line[] {
  const { lift, field, back } = screen;
  const row = (name: Best['field'], words: string): Line[] => {
    const isHere = field === name;
    const [first = BLANK, ...more] = paragraph(words, columns - 12);
    return [
      [
        span(isHere ? '▸ ' : '  ', 'drawn'),
        span(`${screen[name]}${isHere ? '_' : ''}`.padEnd(10), isHere ? 'strong' : 'plain'),
        ...first,
      ],
      ...more.map((one) => [span(' '.repeat(12)), ...one]),
    ];
  };
  return [
    ...titled(
      lift.name,
      'The best set of the last two months, done to the last rep that went up.',
      columns,
    ),
    ...row('load', `${back.answers.unit} ${BASIS_WORDS[basisOf(lift)]}`.trim()),
    ...row('reps', 'reps'),
  ];
}

const { type, rubOut } = typing<Best>(
  ['.', ','],
  'type the number',
  (acting) => {
    const { screen, name } = acting;
    const { field } = screen;
    const typed = screen[field] + (name === ',' ? '.' : name);
    const fits = field === 'reps' ? /^[1-9]\d?$/ : /^\d{0,4}(\.\d{0,2})?$/;
    return fits.test(typed) ? show(acting, { ...screen, [field]: typed }) : ask(acting);
  },
  (acting) => {
    const { screen } = acting;
    return show(acting, { ...screen, [screen.field]: screen[screen.field].slice(0, -1) });
  },
);

const turn: Act<Best> = (acting) => {
  const { screen } = acting;
  return show(acting, { ...screen, field: screen.field === 'load' ? 'reps' : 'load' });
};

/** From the load to the reps, then back to the question with both. */
const keep: Act<Best> = (acting) => {
  const { screen } = acting;
  const { lift, load, reps, back } = screen;
  const { answers } = back;
  const quantity = readQuantity(load, answers.unit);
  if (!quantity || quantity.amount <= 0) {
    return tell({ ...acting, model: at(acting, 'load') }, 'Type the load first, such as 80.');
  }
  if (screen.field === 'load' && reps === '') return turn(acting);
  const count = Number(reps);
  if (reps === '' || count > MOST_REPS_OF_BEST) {
    return tell(
      { ...acting, model: at(acting, 'reps') },
      `Type the reps, 1 to ${MOST_REPS_OF_BEST}.`,
    );
  }
  const best = { lift: lift.key, load: massOf(quantity), reps: count, reserve: 0 };
  const others = answers.bests.filter((one) => one.lift !== lift.key);
  return backTo(acting, { ...back, answers: { ...answers, bests: [...others, best] } });
};

const at = ({ model, screen }: Acting<Best>, field: Best['field']): Acting['model'] => ({
  ...model,
  ui: { ...model.ui, screen: { ...screen, field } },
});

/** The question again, the way on chosen once more. */
const backTo = (acting: Acting, screen: QuestionScreen): Outcome => ({
  ...show(acting, screen),
  effects: [{ do: 'keep-answers', answers: screen.answers }],
});

export const BEST_SCREEN: ScreenModule<Best> = {
  keys: [
    type,
    rubOut,
    { keys: ['enter', 'space'], label: 'take it', footer: 0, tap: { at: 0 }, press: keep },
    {
      keys: ['right', 'left', 'tab', 'down', 'up'],
      label: 'other number',
      footer: 2,
      tap: { at: 2, says: 'OTHER' },
      press: turn,
    },
    {
      keys: ['d'],
      label: 'take it out',
      when: ({ screen: { lift, back } }) =>
        back.answers.bests.some((one) => one.lift === lift.key)
          ? true
          : 'None of it is kept; esc goes back without one.',
      footer: 3,
      press: (acting) => {
        const { lift, back } = acting.screen;
        const bests = back.answers.bests.filter((one) => one.lift !== lift.key);
        return backTo(acting, { ...back, answers: { ...back.answers, bests } });
      },
    },
    HELP,
    backBy<Best>((acting) => show(acting, acting.screen.back)),
  ],
  lines: (seen, columns, rows) => windowOf(lines(seen, columns), rows, 0),
  spoken: ({ screen }) => [
    `${screen.lift.name}. ${screen.field === 'load' ? 'Load' : 'Reps'} of your best set of the last two months.`,
    `Load: ${screen.load || 'not typed'} ${screen.back.answers.unit}. Reps: ${screen.reps || 'not typed'}.`,
  ],
};
