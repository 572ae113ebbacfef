import type { Coach } from '../lifter/coach.ts';
import type { Key } from '../terminal/key-decoder.ts';
import type { Line } from './line.ts';
import type { Model } from './model.ts';
import { type Act, type Acting, ask, type Outcome, RUNNER, type Seen, show } from './outcome.ts';
import { phaseOf } from './phase.ts';
import type { Destination } from './screen-after.ts';
import type { Screen } from './ui-state.ts';

/** What a key is called in the tables and on the screen. */
export type KeyName = string;

/** Keys that type a number. */
export const DIGITS: readonly KeyName[] = [...'0123456789'];

/** A key of a screen: footer, help, README, boxes for taps and the screen reader read these rows. */
export interface KeyRow<S extends Screen = Screen> {
  readonly keys: readonly KeyName[];
  /** What it does, in at most four words. */
  readonly label: string | ((seen: Seen<S>) => string);
  /** True, or the sentence why the key does nothing now; left out where it always does. */
  when?(seen: Seen<S>): true | string;
  /** Place in the footer, the lowest first; left out where only the help names it. */
  readonly footer?: number | ((seen: Seen<S>) => number);
  /** What the footer says of this row and those of the same place together. */
  readonly pair?: string;
  /** Its box for a finger: the place in the row, 0 the widest; and what it says, else the label. */
  readonly tap?: { readonly at: number; readonly says?: string | ((seen: Seen<S>) => string) };
  press(acting: Acting<S>): Outcome;
}

/** Everything about one kind of screen. */
export interface ScreenModule<S extends Screen = Screen> {
  /** The first row that a key fits wins. */
  readonly keys: readonly KeyRow<S>[];
  /** `rows` lines of at most `columns`. */
  lines(seen: Seen<S>, columns: number, rows: number): readonly Line[];
  /** What a screen reader says, a sentence each; without the keys. */
  spoken(seen: Seen<S>): readonly string[];
  /** The same as of now, once what is recorded was changed; left out where it shows none of it. */
  anew?(screen: S, coach: Coach): Screen;
  /** Where text is typed: any key that is in no row. */
  otherKey?(acting: Acting<S>, key: Key): Outcome;
  /** Is text being typed, so that every key but ctrl-c is one for `otherKey`? */
  isTyping?(seen: Seen<S>): boolean;
  /** Row of the text field that is laid over the lines, counted from 0. */
  readonly field?: number;
  /** It says itself what the last key led to. */
  readonly tellsItself?: true;
  /**
   * The lifter stands at the bar: on a low screen the keys take one row, a few of them are said, a
   * finger beside the boxes finds every act, and a key that means nothing is answered.
   */
  readonly atTheBar?: true;
  /** What stands above every screen stands here in whole. */
  readonly wholeBanner?: true;
}

/** The screen that is shown, with all that it may look at. */
export function seenOf(model: Model, coach: Coach): Seen {
  const { session, now, ui } = model;
  return { screen: ui.screen, model, phase: session ? phaseOf(session, now) : null, coach };
}

const INTERRUPTED = 130;

/** On every screen, before all others. */
export const INTERRUPT: KeyRow = {
  keys: ['ctrl-c'],
  label: 'leave at once',
  press: (acting) => ask(acting, { do: 'leave', status: INTERRUPTED }),
};

export const HELP: KeyRow = {
  keys: ['?'],
  label: 'keys',
  footer: 90,
  press: ({ model }) => ({
    ui: { ...model.ui, help: { scroll: 0 }, message: null },
    effects: [],
  }),
};

export const SETTINGS_KEY: KeyRow = {
  keys: ['g'],
  label: 'sounds, taps',
  footer: 13,
  press: (acting) => show(acting, { kind: 'settings', back: acting.screen, chosen: 0 }),
};

/** The key that goes where `press` leads; where text is typed `q` is a letter. */
export const backBy = <S extends Screen>(
  press: Act<S>,
  { keys = ['esc', 'q'], tapAt = 4 }: { keys?: readonly KeyName[]; tapAt?: number } = {},
): KeyRow<S> => ({
  keys,
  label: 'back',
  footer: 1,
  tap: { at: tapAt, says: 'BACK' },
  press,
});

/** Back to the screen that it was opened from. */
export const BACK: KeyRow<Extract<Screen, { back: Screen }>> = backBy((acting) =>
  show(acting, acting.screen.back),
);

export const TO_RUNNER: KeyRow = backBy((acting) => show(acting, RUNNER));

export const TO_PREVIEW: KeyRow = backBy((acting) =>
  show(acting, { kind: 'preview', today: acting.coach.today(), chosen: 0 }),
);

/** Out of holdfast. */
export const LEAVE: KeyRow = {
  keys: ['q', 'esc'],
  label: 'leave',
  footer: 85,
  press: (acting) => ask(acting, { do: 'leave', status: 0 }),
};

/** Where a finger finds it, too. */
export const LEAVE_BY_TAP: KeyRow = { ...LEAVE, tap: { at: 4, says: 'LEAVE' } };

/** The last change of the past in this run never happened; or it did, and what is shown `to` says so. */
export const takingBack = (to: Destination = 'here'): readonly KeyRow[] => [
  {
    keys: ['u'],
    label: 'undo',
    press: (acting) => ask(acting, { do: 'change', change: { kind: 'take-back' }, to }),
  },
  {
    keys: ['ctrl-u'],
    label: 'take the undo back',
    press: (acting) => ask(acting, { do: 'change', change: { kind: 'bring-back' }, to }),
  },
];

/** The keys that rub out, and those that type `signs`. */
export const typing = <S extends Screen>(
  signs: readonly KeyName[],
  label: string,
  type: Act<S>,
  rubOut: Act<S>,
): { readonly type: KeyRow<S>; readonly rubOut: KeyRow<S> } => ({
  type: { keys: [...DIGITS, ...signs], label, press: type },
  rubOut: { keys: ['backspace', 'delete'], label: 'rub out', press: rubOut },
});

/** What a key of the keyboard is called; null for taps and pastes. */
export function keyName(key: Key): KeyName | null {
  if (key.kind === 'named') return key.name;
  if (key.kind === 'text') return key.text.toLowerCase();
  return null;
}

const SHOWN: Readonly<Record<string, string>> = {
  up: '↑',
  down: '↓',
  left: '←',
  right: '→',
  'page-up': 'page up',
  'page-down': 'page down',
};

/** A key as the footer writes it. */
export const shownKey = (name: KeyName): string => SHOWN[name] ?? name;

export const labelOf = ({ label }: KeyRow, seen: Seen): string =>
  typeof label === 'string' ? label : label(seen);

export const mayNow = (row: KeyRow, seen: Seen): true | string => row.when?.(seen) ?? true;

/** The text of a key where text is typed; null for keys that are no text. */
export function textTyped(key: Key): string | null {
  if (key.kind === 'text') return key.text;
  return key.kind === 'named' && key.name === 'space' ? ' ' : null;
}
