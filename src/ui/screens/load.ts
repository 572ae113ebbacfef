import type { Coach } from '../../lifter/coach.ts';
import type { PrescribedExercise } from '../../progression/prescription.ts';
import { presentLoad } from '../../session/aim.ts';
import {
  type Mass,
  massNumber,
  massOf,
  NO_MASS,
  readQuantity,
  type Unit,
} from '../../training/mass.ts';
import { blockDigits } from '../digits.ts';
import { wasRefused } from '../draft.ts';
import { BLANK, type Line, line, paragraph } from '../line.ts';
import {
  type Act,
  type Acting,
  ask,
  type Outcome,
  RUNNER,
  type Seen,
  send,
  show,
  tell,
} from '../outcome.ts';
import { OPEN } from '../page.ts';
import { HELP, type KeyRow, type ScreenModule, TO_RUNNER, typing } from '../screen.ts';
import { typedTexts } from '../spoken/spoken-words.ts';
import type { Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';
import { loadText } from '../words.ts';

type Load = Extract<Screen, { kind: 'load' }>;

/** Asks for the load of an exercise. */
function lines({ model, screen, coach }: Seen<Load>, columns: number): Line[] {
  const { session, size } = model;
  const { exercise, typed, purpose } = screen;
  const prescribed = session?.exercises[exercise]?.prescribed;
  if (!session || !prescribed) return [];
  const { unit } = session.prescription;
  const quantity = readQuantity(typed, unit);
  const near = quantity && coach.nearestLoads(prescribed, massOf(quantity));
  const made = near?.exact !== null && near ? coach.madeUp(prescribed, near.exact) : null;
  const others = [near?.below, near?.above].filter((one) => one !== null && one !== undefined);
  const digits = blockDigits(typed, columns, size.rows >= 24 ? 7 : 5) ?? [typed];
  const state = session.exercises[exercise];
  const present = state ? presentLoad(state) : null;
  const now = present === null ? '' : loadText(present, prescribed, unit);
  return [
    line(prescribed.name, 'strong'),
    ...paragraph(QUESTIONS[purpose](prescribed.range[1] + 2, prescribed.counts, now), columns),
    BLANK,
    ...digits.map((row) => line(row)),
    ...(typed === '' ? [line('_', 'strong')] : []),
    ...paragraph(`${unit} ${BASIS_WORDS[prescribed.basis]}`, columns, 'strong'),
    BLANK,
    ...(typed === '' && present === null ? lightestLines(coach, prescribed, unit, columns) : []),
    ...(made ? paragraph(made.words, columns) : []),
    ...(quantity && near?.exact === null
      ? paragraph(
          others.length > 0
            ? `Your gear makes ${others.map((one) => massNumber(one, unit)).join(' or ')} ${unit}.`
            : 'Your gear makes no load near it.',
          columns,
        )
      : []),
  ];
}

/** The lightest load that the gear makes of a lift; null where it makes none. */
function lightest(coach: Coach, prescribed: PrescribedExercise): Mass | null {
  const { exact, above } = coach.nearestLoads(prescribed, NO_MASS);
  return exact ?? above;
}

/** Where nothing is typed yet: what there is to begin with, and how it is made. */
function lightestLines(
  coach: Coach,
  prescribed: PrescribedExercise,
  unit: Unit,
  columns: number,
): Line[] {
  const load = lightest(coach, prescribed);
  if (load === null) return [];
  const made = coach.madeUp(prescribed, load);
  const words = made ? ` (${made.words})` : '';
  return paragraph(`From ${massNumber(load, unit)} ${unit} up${words}; the arrows step.`, columns);
}

const QUESTIONS = {
  'first-session': (count: number, counts: string) =>
    `First time: choose a load that you could do for ${count} ${counts}.`,
  change: (_count: number, _counts: string, now: string) =>
    now ? `Now ${now}. Which load from here on?` : 'Which load from here on?',
} as const;

/** What a bare load means, behind its unit. */
export const BASIS_WORDS = {
  total: 'on the bar in all',
  hand: 'in each hand',
  stack: 'on the stack',
  added: 'beside body weight; minus is assistance',
  load: '',
} as const;

/** The load that was typed, once it can be made; else the nearest ones are named. */
const take: Act<Load> = (acting) => {
  const { model, screen, coach } = acting;
  const { session } = model;
  const { exercise, typed } = screen;
  const prescribed = session?.exercises[exercise]?.prescribed;
  if (!session || !prescribed) return ask(acting);
  const { unit } = session.prescription;
  const quantity = readQuantity(typed, unit);
  if (!quantity) return tell(acting, 'Type a load first, such as 72.5.');
  const { below, exact, above } = coach.nearestLoads(prescribed, massOf(quantity));
  if (exact === null) {
    const near = [below, above].filter((one) => one !== null).map((one) => massNumber(one, unit));
    const words = near.length > 0 ? `${near.join(' or ')} ${unit} can be` : 'change the gear first';
    return tell(acting, `${typed} ${unit} cannot be made with your gear; ${words}.`);
  }
  const by = coach.withLoad(prescribed, exact);
  return send(acting, [{ do: 'replace', exercise, by, because: 'other-load' }], RUNNER);
};

const showTyped = (acting: Acting<Load>, typed: string): Outcome =>
  show(acting, { ...acting.screen, typed, isStepped: false });

const { type, rubOut } = typing<Load>(
  ['.', ',', '-'],
  'type the load',
  (acting) => {
    const { screen, name, model } = acting;
    const before = screen.isStepped || wasRefused(model) ? '' : screen.typed;
    const typed = before + (name === ',' ? '.' : name);
    return /^-?\d{0,4}(\.\d{0,3})?$/.test(typed) ? showTyped(acting, typed) : ask(acting);
  },
  (acting) => showTyped(acting, acting.screen.typed.slice(0, -1)),
);

const step =
  (by: 1 | -1): Act<Load> =>
  (acting) => {
    const { model, screen, coach } = acting;
    const state = model.session?.exercises[screen.exercise];
    if (!model.session || !state) return ask(acting);
    const { unit } = model.session.prescription;
    const present = presentLoad(state);
    const text = screen.typed || (present === null ? '' : massNumber(present, unit));
    const quantity = readQuantity(text, unit);
    if (text !== '' && !quantity) return ask(acting);
    const near = quantity && coach.nearestLoads(state.prescribed, massOf(quantity));
    // Before any load is known both arrows begin with the lightest.
    const next = near ? near[by > 0 ? 'above' : 'below'] : lightest(coach, state.prescribed);
    if (next === null)
      return tell(acting, `No ${by > 0 ? 'heavier' : 'lighter'} load can be made.`);
    return show(acting, { ...screen, typed: massNumber(next, unit), isStepped: true });
  };

const stepKey = (key: 'up' | 'down', label: string, by: 1 | -1): KeyRow<Load> => ({
  keys: [key],
  label,
  footer: 2,
  pair: 'heavier, lighter',
  tap: by > 0 ? { at: 3, says: '+' } : { at: 2, says: '−' },
  press: step(by),
});

export const LOAD_SCREEN: ScreenModule<Load> = {
  keys: [
    type,
    rubOut,
    stepKey('up', 'next heavier', 1),
    stepKey('down', 'next lighter', -1),
    { keys: ['enter', 'space'], label: 'take it', footer: 0, tap: { at: 0 }, press: take },
    HELP,
    TO_RUNNER,
  ],
  lines: (seen, columns, rows) => windowOf(lines(seen, columns), rows, 0),
  spoken: (seen) => typedTexts(lines(seen, OPEN), seen.screen.typed),
};
