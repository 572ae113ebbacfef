import { shortDayWords } from '../../text/day-words.ts';
import { safeText } from '../../text/safe-text.ts';
import { movedOn, rubbedOut, stepped, typedInto, wasRefused } from '../draft.ts';
import { draftNumbers, type EntryTarget } from '../entry.ts';
import { BLANK, indented, type Line, line, paragraph, textOf } from '../line.ts';
import { type Choice, type ChoiceList, listScreen } from '../list.ts';
import { type Act, type Acting, ask, type Seen, show, tell } from '../outcome.ts';
import { OPEN, pageScreen, titled } from '../page.ts';
import { fieldLine } from '../runner/entry-lines.ts';
import { BACK, HELP, type KeyRow, type ScreenModule, takingBack, typing } from '../screen.ts';
import { resultsAnew } from '../screen-after.ts';
import type { PastSessionScreen, Screen, Typing, WholeSessionScreen } from '../ui-state.ts';
import { windowOf } from '../window.ts';
import { loadText, numbersText } from '../words.ts';

type Delete = Extract<Screen, { kind: 'delete' }>;
type Correct = Extract<Screen, { kind: 'correct' }>;

function setList({ screen }: Seen<PastSessionScreen>): ChoiceList {
  const { row, unit, notes } = screen.past;
  const { sets, exercise, date, program, day } = row.result;
  const where = `${program}, day ${day}`;
  return {
    title: safeText(`${exercise.name}, ${shortDayWords(date.toString())} ${date.year}`),
    words: safeText([where, ...notes.map((note) => `“${note}”`)].join(' · ')),
    choices: [
      ...sets.map(
        (set, index): Choice => ({
          label: `Set ${index + 1}`,
          detail: `${loadText(set.load, exercise, unit)} · ${numbersText(set, exercise)}`,
          effects: [],
        }),
      ),
      {
        label: 'The whole session',
        detail: 'enter shows all its lifts, d deletes it',
        effects: [],
      },
    ],
  };
}

const chosenSet = ({ screen }: Seen<PastSessionScreen>) =>
  screen.past.row.result.sets[screen.chosen];

const open: Act<PastSessionScreen> = (acting) => {
  const set = chosenSet(acting);
  if (!set) {
    const lifts = acting.coach.lookBack.session(acting.screen.past.session);
    return show(acting, { kind: 'whole-session', lifts, back: acting.screen, scroll: 0 });
  }
  return show(acting, { kind: 'correct', set, field: 'count', typed: {}, back: acting.screen });
};

const remove: Act<PastSessionScreen> = (acting) => {
  const { past, chosen } = acting.screen;
  const { date, exercise } = past.row.result;
  const set = chosenSet(acting);
  const words = set
    ? `Set ${chosen + 1} of ${exercise.name}, ${date.toString()}`
    : `The session of ${date.toString()}, with every lift in it`;
  const of = set?.id ?? past.session;
  return show(acting, { kind: 'delete', of, words, chosen: 0, back: acting.screen });
};

export const PAST_SESSION_SCREEN: ScreenModule<PastSessionScreen> = {
  ...listScreen<PastSessionScreen>({
    list: setList,
    choose: {
      label: (seen) => (chosenSet(seen) ? 'correct it' : 'show all of it'),
      press: open,
    },
    first: [
      {
        keys: ['c'],
        label: 'correct it',
        when: (seen) => (chosenSet(seen) ? true : 'Choose a set first.'),
        press: open,
      },
    ],
    last: [BACK, { keys: ['d'], label: 'delete it', footer: 2, press: remove }, ...takingBack()],
  }),
  anew: ({ back }, coach) => resultsAnew(back, coach),
};

/** A session as it was done, lift by lift. */
function wholeAll({ screen }: Seen<WholeSessionScreen>, columns: number): Line[] {
  const { lifts } = screen;
  const [first] = lifts;
  if (!first) return [line('Nothing is left of this session.')];
  const { date, program, day } = first.row.result;
  return [
    ...titled(
      safeText(`${program}, day ${day}`),
      `${shortDayWords(date.toString())} ${date.year}`,
      columns,
    ),
    ...lifts.flatMap(({ row: { result }, unit }) => {
      const { exercise, sets, pain, finished } = result;
      const marks = [pain && 'pain marked', !finished && 'not finished'].filter(Boolean);
      return [
        line(safeText(exercise.name), 'strong'),
        ...sets.flatMap((set) =>
          paragraph(
            `${loadText(set.load, exercise, unit)} · ${numbersText(set, exercise)}`,
            columns - 2,
          ).map((one) => indented(one, 2)),
        ),
        ...(marks.length > 0 ? [indented(line(marks.join(', ')), 2)] : []),
        BLANK,
      ];
    }),
    ...first.notes.flatMap((note) => paragraph(safeText(`“${note}”`), columns)),
  ];
}

export const WHOLE_SESSION_SCREEN = pageScreen<WholeSessionScreen>({
  all: wholeAll,
  last: [{ ...BACK, tap: { at: 0, says: 'BACK' } }],
});

function deleteList({ screen }: Seen<Delete>): ChoiceList {
  const { of, words, back } = screen;
  return {
    title: 'Delete?',
    words,
    choices: [
      { label: 'Keep it', effects: [], to: back },
      {
        label: 'Delete it',
        detail: 'u brings it back, as long as you are here',
        effects: [{ do: 'change', change: { kind: 'delete', of }, to: 'here' }],
      },
    ],
  };
}

export const DELETE_SCREEN: ScreenModule<Delete> = {
  ...listScreen<Delete>({ list: deleteList, last: [BACK] }),
  anew: ({ back }, coach) => resultsAnew(back.back, coach),
};

/** An old set with the numbers that are typed over it. */
function correctionOf({ set, field, typed, back }: Correct): {
  readonly target: EntryTarget;
  readonly draft: Typing;
} {
  return {
    target: { of: null, exercise: back.past.row.result.exercise, numbers: set },
    draft: { of: set.id, field, typed },
  };
}

/** The numbers of an old set, to be typed over. */
function correctLines({ screen }: Seen<Correct>, columns: number): Line[] {
  const { past } = screen.back;
  const { exercise, date } = past.row.result;
  const { target, draft } = correctionOf(screen);
  const index = past.row.result.sets.findIndex(({ id }) => id === screen.set.id);
  return [
    ...titled(`${exercise.name}, set ${index + 1}`, shortDayWords(date.toString()), columns),
    fieldLine(target, draft, past.unit, columns),
    BLANK,
    ...paragraph(
      'The set stays as it was written; the correction is kept beside it, and what comes next follows from it.',
      columns,
    ),
  ];
}

const onNumbers =
  (
    change: (draft: Typing, target: EntryTarget, acting: Acting<Correct>) => Typing | string,
  ): Act<Correct> =>
  (acting) => {
    const { draft, target } = correctionOf(acting.screen);
    const next = change(draft, target, acting);
    if (typeof next === 'string') return tell(acting, next);
    return show(acting, { ...acting.screen, field: next.field, typed: next.typed });
  };

const unitOf = ({ screen }: Seen<Correct>) => screen.back.past.unit;

const { type, rubOut } = typing<Correct>(
  ['.', ','],
  'type the number',
  onNumbers((draft, _, { name, model }) => typedInto(draft, name, wasRefused(model))),
  onNumbers((draft, target, acting) => rubbedOut(draft, target, unitOf(acting))),
);

const stepKey = (key: 'up' | 'down', label: string, by: 1 | -1): KeyRow<Correct> => ({
  keys: [key],
  label,
  footer: 2,
  pair: 'more, less',
  tap: by > 0 ? { at: 3, says: '+' } : { at: 2, says: '−' },
  press: onNumbers((draft, target, acting) =>
    stepped(draft, target, unitOf(acting), by, acting.coach),
  ),
});

const moveField = (by: 1 | -1) => onNumbers((draft, target) => movedOn(draft, target, by));

const save: Act<Correct> = (acting) => {
  const { screen } = acting;
  const numbers = draftNumbers(correctionOf(screen).draft, unitOf(acting));
  if (typeof numbers === 'string') return tell(acting, numbers);
  if (numbers === null) return tell(acting, 'Nothing was typed; the set stays as it is.');
  const change = { kind: 'correct', set: screen.set.id, numbers } as const;
  return ask(acting, { do: 'change', change, to: 'here' });
};

export const CORRECT_SCREEN: ScreenModule<Correct> = {
  anew: ({ back }, coach) => resultsAnew(back.back, coach),
  keys: [
    rubOut,
    type,
    stepKey('up', 'one more', 1),
    stepKey('down', 'one less', -1),
    { keys: ['right', 'tab'], label: 'next number', footer: 3, press: moveField(1) },
    { keys: ['left', 'shift-tab'], label: 'number before', press: moveField(-1) },
    { keys: ['enter', 'space'], label: 'save numbers', footer: 0, tap: { at: 0 }, press: save },
    HELP,
    BACK,
  ],
  lines: (seen, columns, rows) => windowOf(correctLines(seen, columns), rows, 0),
  spoken: (seen) => correctLines(seen, OPEN).map(textOf),
};
