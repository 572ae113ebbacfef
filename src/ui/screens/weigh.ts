import { shortDayWords } from '../../text/day-words.ts';
import { massOf, readQuantity } from '../../training/mass.ts';
import { blockDigits } from '../digits.ts';
import { BLANK, type Line, line, paragraph, span } from '../line.ts';
import { type Act, ask, type Seen, show, tell } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { HELP, type KeyRow, type ScreenModule, TAKE_BACK, TO_PREVIEW, typing } from '../screen.ts';
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
      weighing: acting.bench.watch.weighing(),
      typed: '',
      doubted: null,
    }),
};

/** Asks for today's body weight. */
function lines({ model, screen }: Seen<Weigh>, columns: number): Line[] {
  const { weighing, typed } = screen;
  const { date, unit, words } = weighing;
  const digits = blockDigits(typed, columns, model.size.rows >= 24 ? 7 : 5) ?? [typed];
  // A unit that is typed beats the program's.
  const shown = readQuantity(typed, unit)?.unit ?? unit;
  return [
    [span('Weigh in', 'strong'), span(` · ${shortDayWords(date.toString())}`)],
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
  'type the weight',
  (acting) => {
    const { screen, name } = acting;
    const typed = screen.typed + (name === ',' ? '.' : name);
    return /^\d{0,4}(\.\d{0,2})?$/.test(typed) ? show(acting, { ...screen, typed }) : ask(acting);
  },
  (acting) => show(acting, { ...acting.screen, typed: acting.screen.typed.slice(0, -1) }),
);

/** A reading that looks like a slip of the finger counts only once it was typed a second time. */
const keep: Act<Weigh> = (acting) => {
  const { screen, bench } = acting;
  const { typed, doubted, weighing } = screen;
  const quantity = readQuantity(typed, weighing.unit);
  if (!quantity) return tell(acting, 'Type your body weight first, such as 82.4.');
  const mass = massOf(quantity);
  const doubt = doubted?.amount === quantity.amount ? null : bench.watch.doubt(mass);
  if (!doubt) return ask(acting, { do: 'change', change: { kind: 'weigh', mass }, to: 'preview' });
  const { what, why = '' } = doubt.problem;
  const asked = show(acting, { ...screen, typed: '', doubted: quantity });
  const words = [what, why, doubt.meant === null ? '' : meantText(doubt.problem.fix)];
  const message = [
    ...words.filter(Boolean),
    `Type ${typed} once more to keep it all the same.`,
  ].join(' ');
  return { ...asked, ui: { ...asked.ui, message } };
};

/** The question alone: what to do about it is said by the screen's own keys. */
const meantText = (fix = ''): string => fix.slice(0, fix.indexOf('?') + 1);

/** The last reading goes, whenever it was made; `u` brings it back. */
const removeLast: Act<Weigh> = (acting) => {
  const of = acting.screen.weighing.last;
  return of === null
    ? tell(acting, 'There is no weigh-in to delete.')
    : ask(acting, { do: 'change', change: { kind: 'delete', of }, to: 'here' });
};

export const WEIGH_SCREEN: ScreenModule<Weigh> = {
  keys: [
    type,
    { keys: ['enter', 'space'], label: 'keep it', footer: 0, tap: { at: 0 }, press: keep },
    { keys: ['d'], label: 'delete the last', footer: 1, press: removeLast },
    rubOut,
    HELP,
    TO_PREVIEW,
    TAKE_BACK,
  ],
  lines: (seen, columns, rows) => windowOf(lines(seen, columns), rows, 0),
  spoken: (seen) => typedTexts(lines(seen, OPEN), seen.screen.typed),
};
