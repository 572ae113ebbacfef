import type { WaistDoubt } from '../../cut/waist-doubt.ts';
import type { WeighInDoubt } from '../../cut/weigh-in-doubt.ts';
import { shortDayWords } from '../../text/day-words.ts';
import {
  lengthIn,
  lengthText,
  readLength,
  tapeOf,
  WAIST_LIMITS,
  WAIST_PLACE,
} from '../../training/length.ts';
import { massOf, massText, readQuantity } from '../../training/mass.ts';
import { blockDigits } from '../digits.ts';
import { BLANK, type Line, line, paragraph, span } from '../line.ts';
import { listScreen, paging } from '../list.ts';
import { type Act, ask, type Seen, show, tell } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { HELP, type KeyRow, type ScreenModule, TAKE_BACK, TO_PREVIEW, typing } from '../screen.ts';
import { readingsScreen } from '../screen-after.ts';
import { typedTexts } from '../spoken/spoken-words.ts';
import type { Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';

type Weigh = Extract<Screen, { kind: 'weigh' }>;

/** From the preview. */
export const WEIGH_KEY: KeyRow = {
  keys: ['i'],
  label: 'weigh in',
  footer: 4,
  press: (acting) =>
    show(acting, {
      kind: 'weigh',
      of: 'weight',
      weighing: acting.coach.lookBack.weighing(null),
      typed: '',
      doubted: null,
    }),
};

/** Asks for today's body weight, or for the waist. */
function lines({ model, screen }: Seen<Weigh>, columns: number): Line[] {
  const { weighing, typed, of } = screen;
  const { date, unit } = weighing;
  const digits = blockDigits(typed, columns, model.size.rows >= 24 ? 7 : 5) ?? [typed];
  const title = of === 'waist' ? 'Waist' : weighing.instead ? 'Correct' : 'Weigh in';
  const words = of === 'waist' ? [WAIST_PLACE, ...weighing.waist] : weighing.words;
  // A unit that is typed beats the program's.
  const shown = of === 'waist' ? tapeOf(unit) : (readQuantity(typed, unit)?.unit ?? unit);
  return [
    [span(title, 'strong'), span(` · ${shortDayWords(date.toString())}`)],
    ...(weighing.instead ? [line(`In place of ${massText(weighing.instead.mass, unit)}`)] : []),
    BLANK,
    ...digits.map((row) => line(row)),
    ...(typed === '' ? [line('_', 'strong')] : []),
    line(shown, 'strong'),
    BLANK,
    ...words.flatMap((text) => paragraph(text, columns)),
  ];
}

const { type, rubOut } = typing<Weigh>(
  ['.', ','],
  'type the number',
  (acting) => {
    const { screen, name } = acting;
    const typed = screen.typed + (name === ',' ? '.' : name);
    return /^\d{0,4}(\.\d{0,2})?$/.test(typed) ? show(acting, { ...screen, typed }) : ask(acting);
  },
  (acting) => show(acting, { ...acting.screen, typed: acting.screen.typed.slice(0, -1) }),
);

/** A reading that looks like a slip of the finger counts only once it was typed a second time. */
const keepWeight: Act<Weigh> = (acting) => {
  const { screen, coach } = acting;
  const { typed, doubted, weighing } = screen;
  const quantity = readQuantity(typed, weighing.unit);
  if (!quantity) return tell(acting, 'Type your body weight first, such as 82.4.');
  const mass = massOf(quantity);
  const doubt = doubted === quantity.amount ? null : coach.lookBack.doubt(mass);
  if (doubt) return doubtIt(acting, quantity.amount, doubt);
  const { instead } = weighing;
  const change = { kind: 'weigh', mass, instead } as const;
  return ask(acting, { do: 'change', change, to: instead ? 'readings' : 'preview' });
};

function doubtIt(
  acting: Parameters<Act<Weigh>>[0],
  amount: number,
  { problem, meant }: WeighInDoubt | WaistDoubt,
) {
  const { screen } = acting;
  const { what, why = '' } = problem;
  const asked = show(acting, { ...screen, typed: '', doubted: amount });
  const words = [what, why, meant === null ? '' : meantText(problem.fix)];
  const message = [
    ...words.filter(Boolean),
    `Type ${screen.typed} once more to keep it all the same.`,
  ].join(' ');
  return { ...asked, ui: { ...asked.ui, message } };
}

const keepWaist: Act<Weigh> = (acting) => {
  const { screen, coach } = acting;
  const { typed, doubted, weighing } = screen;
  const tape = tapeOf(weighing.unit);
  const read = readLength(typed, tape);
  if (!read) return tell(acting, 'Type what the tape says first, such as 86.5.');
  const [least, most] = WAIST_LIMITS;
  if (read.length < least || read.length > most) {
    const ends = `${lengthText(least, tape)} and ${lengthText(most, tape)}`;
    return tell(acting, `A waist lies between ${ends}.`);
  }
  const amount = lengthIn(read.length, tape);
  const doubt = doubted === amount ? null : coach.lookBack.doubtWaist(read.length);
  if (doubt) return doubtIt(acting, amount, doubt);
  const change = { kind: 'measure', length: read.length } as const;
  return ask(acting, { do: 'change', change, to: 'preview' });
};

const keep: Act<Weigh> = (acting) =>
  acting.screen.of === 'waist' ? keepWaist(acting) : keepWeight(acting);

/** The question alone: what to do about it is said by the screen's own keys. */
const meantText = (fix = ''): string => fix.slice(0, fix.indexOf('?') + 1);

/** The last reading goes, whenever it was made; `u` brings it back. */
const removeLast: Act<Weigh> = (acting) => {
  const { weighing, of: what } = acting.screen;
  const of = what === 'waist' ? weighing.lastWaist : weighing.last;
  return of === null
    ? tell(acting, `There is no ${what === 'waist' ? 'waist reading' : 'weigh-in'} to delete.`)
    : ask(acting, { do: 'change', change: { kind: 'delete', of }, to: 'here' });
};

export const WEIGH_SCREEN: ScreenModule<Weigh> = {
  anew: (screen, { lookBack }) => ({
    ...screen,
    weighing: lookBack.weighing(screen.weighing.instead),
  }),
  keys: [
    type,
    { keys: ['enter', 'space'], label: 'keep it', footer: 0, tap: { at: 0 }, press: keep },
    {
      keys: ['tab'],
      label: ({ screen }) => (screen.of === 'waist' ? 'the weight' : 'the waist'),
      when: ({ screen }) => (screen.weighing.instead ? 'A weigh-in is corrected here.' : true),
      footer: 1,
      press: (acting) => {
        const { screen } = acting;
        const of = screen.of === 'waist' ? 'weight' : 'waist';
        return show(acting, { ...screen, of, typed: '', doubted: null });
      },
    },
    { keys: ['d'], label: 'delete the last', footer: 1, press: removeLast },
    {
      keys: ['h'],
      label: 'all readings',
      footer: 2,
      press: (acting) => show(acting, readingsScreen(acting.coach)),
    },
    rubOut,
    HELP,
    TO_PREVIEW,
    TAKE_BACK,
  ],
  lines: (seen, columns, rows) => windowOf(lines(seen, columns), rows, 0),
  spoken: (seen) => typedTexts(lines(seen, OPEN), seen.screen.typed),
};

type Readings = Extract<Screen, { kind: 'readings' }>;

const chosenReading = ({ screen }: Seen<Readings>) => screen.readings[screen.chosen];

const correctReading: Act<Readings> = (acting) => {
  const instead = chosenReading(acting);
  if (!instead) return tell(acting, 'There is nothing to correct.');
  const weighing = acting.coach.lookBack.weighing(instead);
  return show(acting, { kind: 'weigh', of: 'weight', weighing, typed: '', doubted: null });
};

const removeReading: Act<Readings> = (acting) => {
  const reading = chosenReading(acting);
  return reading
    ? ask(acting, { do: 'change', change: { kind: 'delete', of: reading.id }, to: 'here' })
    : tell(acting, 'There is nothing to delete.');
};

/** Every weigh-in, to be corrected or deleted. */
export const READINGS_SCREEN: ScreenModule<Readings> = {
  ...listScreen<Readings>({
    list: ({ screen, coach }) => ({
      title: 'Weigh-ins',
      words: screen.readings.length > 0 ? null : 'None yet.',
      choices: screen.readings.map(({ date, mass }) => ({
        label: date.toString(),
        detail: massText(mass, coach.lookBack.unit()),
        effects: [],
      })),
    }),
    choose: { keys: ['space', 'enter', 'c'], label: 'correct it', press: correctReading },
    last: [
      TO_PREVIEW,
      { keys: ['d'], label: 'delete it', footer: 2, press: removeReading },
      ...paging<Readings>(({ screen }) => screen.readings.length),
      TAKE_BACK,
    ],
  }),
  anew: ({ chosen }, coach) => readingsScreen(coach, chosen),
};
