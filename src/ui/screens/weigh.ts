import type { ReadingDoubt } from '../../cut/reading-doubt.ts';
import type { Coach } from '../../lifter/coach.ts';
import { shortDayWords } from '../../text/day-words.ts';
import {
  type Length,
  lengthIn,
  lengthText,
  readLength,
  tapeOf,
  WAIST_LIMITS,
  WAIST_PLACE,
} from '../../training/length.ts';
import { type Mass, massOf, massText, readQuantity } from '../../training/mass.ts';
import { blockDigits } from '../digits.ts';
import { BLANK, type Line, line, paragraph, span } from '../line.ts';
import { listScreen, paging } from '../list.ts';
import { type Act, ask, type Seen, show, tell } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { HELP, type KeyRow, type ScreenModule, TO_PREVIEW, takingBack, typing } from '../screen.ts';
import { readingsScreen } from '../screen-after.ts';
import { typedTexts } from '../spoken/spoken-words.ts';
import type { Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';

type Weigh = Extract<Screen, { kind: 'weigh' }>;

const NOTHING = { typed: '', doubted: null } as const;
const UNTYPED = { ...NOTHING, aside: NOTHING } as const;

/** The screen of the other one, weight or waist; what was typed of this one stays. */
const turned = ({ of, typed, doubted, aside, ...screen }: Weigh): Weigh => ({
  ...screen,
  of: of === 'waist' ? 'weight' : 'waist',
  ...aside,
  aside: { typed, doubted },
});

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
      ...UNTYPED,
    }),
};

/** Asks for today's body weight, or for the waist. */
function lines({ model, screen }: Seen<Weigh>, columns: number): Line[] {
  const { weighing, typed, of } = screen;
  const { date } = weighing;
  const other = turned(screen);
  const digits = blockDigits(typed, columns, model.size.rows >= 24 ? 7 : 5) ?? [typed];
  const title = of === 'waist' ? 'Waist' : weighing.instead ? 'Correct' : 'Weigh in';
  const words = of === 'waist' ? [WAIST_PLACE, ...weighing.waist] : weighing.words;
  const shown = unitOf(screen);
  return [
    [span(title, 'strong'), span(` · ${shortDayWords(date.toString())}`)],
    ...(weighing.instead
      ? [line(`In place of ${massText(weighing.instead.mass, weighing.unit)}`)]
      : []),
    BLANK,
    ...digits.map((row) => line(row)),
    ...(typed === '' ? [line('_', 'strong')] : []),
    line(shown, 'strong'),
    BLANK,
    ...(other.typed === ''
      ? []
      : paragraph(`${NAMES[other.of]} ${other.typed} ${unitOf(other)} is kept with it.`, columns)),
    ...words.flatMap((text) => paragraph(text, columns)),
  ];
}

const NAMES = { weight: 'Body weight', waist: 'Waist' } as const;

/** A unit that is typed beats the program's. */
const unitOf = ({ of, typed, weighing: { unit } }: Weigh): string =>
  of === 'waist' ? tapeOf(unit) : (readQuantity(typed, unit)?.unit ?? unit);

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

/** What was typed of one of the two, or why it is not kept. */
type Read =
  | { readonly is: 'read'; readonly mass?: Mass; readonly length?: Length }
  | { readonly is: 'unread'; readonly why: string }
  | { readonly is: 'doubted'; readonly amount: number; readonly doubt: Doubt };
type Doubt = ReadingDoubt<Mass> | ReadingDoubt<Length>;

/** A reading that looks like a slip of the finger counts only once it was typed a second time. */
function readWeight({ typed, doubted, weighing }: Weigh, { lookBack }: Coach): Read {
  const quantity = readQuantity(typed, weighing.unit);
  if (!quantity) return { is: 'unread', why: 'Type your body weight first, such as 82.4.' };
  const mass = massOf(quantity);
  const doubt = doubted === quantity.amount ? null : lookBack.doubt(mass);
  return doubt ? { is: 'doubted', amount: quantity.amount, doubt } : { is: 'read', mass };
}

function readWaist({ typed, doubted, weighing }: Weigh, { lookBack }: Coach): Read {
  const tape = tapeOf(weighing.unit);
  const read = readLength(typed, tape);
  if (!read) return { is: 'unread', why: 'Type what the tape says first, such as 86.5.' };
  const [least, most] = WAIST_LIMITS;
  if (read.length < least || read.length > most) {
    const ends = `${lengthText(least, tape)} and ${lengthText(most, tape)}`;
    return { is: 'unread', why: `A waist lies between ${ends}.` };
  }
  const amount = lengthIn(read.length, tape);
  const doubt = doubted === amount ? null : lookBack.doubtWaist(read.length);
  return doubt ? { is: 'doubted', amount, doubt } : { is: 'read', length: read.length };
}

/** What is shown, and what was typed of the other one before; both or none are kept. */
const keep: Act<Weigh> = (acting) => {
  const { screen, coach } = acting;
  const { instead } = screen.weighing;
  const other = turned(screen);
  const isOtherAlone = screen.typed === '' && screen.doubted === null && other.typed !== '';
  const asked = [...(isOtherAlone ? [] : [screen]), ...(other.typed === '' ? [] : [other])];
  let found: { readonly mass: Mass | null; readonly length: Length | null } = NONE;
  for (const each of asked) {
    const read = each.of === 'waist' ? readWaist(each, coach) : readWeight(each, coach);
    if (read.is === 'unread') return shownWith(acting, each, read.why);
    if (read.is === 'doubted') {
      const words = doubtWords(each.typed, read.doubt);
      return shownWith(acting, { ...each, typed: '', doubted: read.amount }, words);
    }
    const { mass = found.mass, length = found.length } = read;
    found = { mass, length };
  }
  const change = { kind: 'weigh', ...found, instead } as const;
  return ask(acting, { do: 'change', change, to: instead ? 'readings' : 'preview' });
};

const NONE = { mass: null, length: null } as const;

function shownWith(acting: Seen<Weigh>, screen: Weigh, message: string) {
  const { ui, effects } = show(acting, screen);
  return { ui: { ...ui, message }, effects };
}

function doubtWords(typed: string, { problem, meant }: Doubt): string {
  const { what, why = '' } = problem;
  const words = [what, why, meant === null ? '' : meantText(problem.fix)];
  return [...words.filter(Boolean), `Type ${typed} once more to keep it all the same.`].join(' ');
}

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
      press: (acting) => show(acting, turned(acting.screen)),
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
    ...takingBack(),
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
  return show(acting, { kind: 'weigh', of: 'weight', weighing, ...UNTYPED });
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
      ...takingBack(),
    ],
  }),
  anew: ({ chosen }, coach) => readingsScreen(coach, chosen),
};
