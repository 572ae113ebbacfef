import type { Key } from '../terminal/key-decoder.ts';
import { type Binding, DIGITS, type KeyName } from './binding.ts';
import { RUNNER } from './outcome.ts';
import { type Phase, phaseOf } from './phase.ts';
import { PROGRAM_KEYS } from './program-keys.ts';
import { RUNNER_KEYS } from './runner-keys.ts';
import type { Model, ScreenKind } from './ui-state.ts';
import { WATCH_KEYS } from './watch-keys.ts';
import { can } from './when.ts';

const LISTS: readonly ScreenKind[] = [
  'discard',
  'exercises',
  'acts',
  'swap',
  'pain',
  'finish',
  'settings',
  'stale',
  'lifts',
  'results',
  'delete',
  'unsaved',
];
const SCROLLED: readonly ScreenKind[] = [
  'cautions',
  'why',
  'summary',
  'weight-question',
  'review',
  'advice',
  'changes',
  'findings',
];
const PAGES: readonly ScreenKind[] = [
  ...SCROLLED,
  'preview',
  'load',
  'weigh',
  'past-session',
  'correct',
  'program',
];
const LEAVABLE: readonly ScreenKind[] = ['runner', 'preview', 'cautions', 'stale', 'summary'];

/** Every key of the program. Footer, help and README derive from this table; the first row that fits wins. */
export const KEYMAP: readonly Binding[] = [
  {
    act: 'interrupt',
    keys: ['ctrl-c'],
    label: 'leave at once',
    screens: [...LISTS, ...PAGES, 'runner', 'note', 'search', 'add-lift'],
    when: can.always,
    footer: null,
  },
  ...RUNNER_KEYS,
  {
    act: 'swap',
    keys: ['l'],
    label: 'another lift',
    screens: ['exercises'],
    when: can.always,
    footer: 2,
  },
  {
    act: 'leave-out',
    keys: ['d'],
    label: 'leave out',
    screens: ['exercises'],
    when: can.always,
    footer: 3,
  },
  {
    act: 'main',
    keys: ['space'],
    label: 'begin',
    screens: ['preview'],
    when: can.begin,
    footer: 0,
  },
  {
    act: 'begin-here',
    keys: ['enter'],
    label: 'begin with it',
    screens: ['preview'],
    when: can.beginHere,
    footer: 0,
  },
  {
    act: 'other-day',
    keys: ['d'],
    label: 'another day',
    screens: ['preview'],
    when: can.otherDay,
    footer: 3,
  },
  {
    act: 'less-time',
    keys: ['k'],
    label: 'less time',
    screens: ['preview'],
    when: can.lessTime,
    footer: 3,
  },
  {
    act: 'read-on',
    keys: ['space'],
    label: 'read on',
    screens: ['cautions', 'why'],
    when: can.always,
    footer: 0,
  },
  {
    act: 'yes',
    keys: ['y'],
    label: 'some yes',
    screens: ['cautions'],
    when: can.always,
    footer: 0,
  },
  {
    act: 'no',
    keys: ['n'],
    label: 'all no',
    screens: ['cautions'],
    when: can.always,
    footer: 0,
  },
  {
    act: 'type',
    keys: [...DIGITS, '.', ',', '-'],
    label: 'type the load',
    screens: ['load'],
    when: can.always,
    footer: null,
  },
  {
    act: 'rub-out',
    keys: ['backspace', 'delete'],
    label: 'rub out',
    screens: ['load'],
    when: can.always,
    footer: null,
  },
  {
    act: 'more',
    keys: ['up'],
    label: 'next heavier',
    screens: ['load'],
    when: can.always,
    footer: 2,
    pair: 'heavier, lighter',
  },
  {
    act: 'less',
    keys: ['down'],
    label: 'next lighter',
    screens: ['load'],
    when: can.always,
    footer: 2,
    pair: 'heavier, lighter',
  },
  {
    act: 'choose',
    keys: ['enter', 'space'],
    label: 'take it',
    screens: ['load'],
    when: can.always,
    footer: 0,
  },
  {
    act: 'choose',
    keys: ['space', 'enter'],
    label: 'choose',
    screens: LISTS,
    when: can.always,
    footer: 0,
  },
  {
    act: 'choice-up',
    keys: ['up'],
    label: 'up',
    screens: [...LISTS, 'preview', 'past-session', 'program', 'add-lift'],
    when: can.always,
    footer: 1,
    pair: 'up, down',
  },
  {
    act: 'choice-down',
    keys: ['down'],
    label: 'down',
    screens: [...LISTS, 'preview', 'past-session', 'program', 'add-lift'],
    when: can.always,
    footer: 1,
    pair: 'up, down',
  },
  {
    act: 'page-up',
    keys: ['up', 'page-up'],
    label: 'up',
    screens: SCROLLED,
    when: can.always,
    footer: 5,
    pair: 'up, down',
  },
  {
    act: 'page-down',
    keys: ['down', 'page-down'],
    label: 'down',
    screens: SCROLLED,
    when: can.always,
    footer: 5,
    pair: 'up, down',
  },
  {
    act: 'settings',
    keys: ['g'],
    label: 'sounds, taps',
    screens: ['runner', 'preview'],
    when: can.always,
    footer: 13,
  },
  {
    act: 'help',
    keys: ['?'],
    label: 'keys',
    screens: [...LISTS, ...PAGES, 'runner'],
    when: can.always,
    footer: 90,
  },
  {
    act: 'read-on',
    keys: ['space', 'enter'],
    label: 'read on, done',
    screens: ['summary'],
    when: can.always,
    footer: 0,
  },
  {
    act: 'back',
    keys: ['esc', 'q'],
    label: 'back',
    screens: [
      'acts',
      'exercises',
      'swap',
      'pain',
      'finish',
      'discard',
      'settings',
      'load',
      'why',
      'weight-question',
      'review',
      'advice',
      'weigh',
      'lifts',
      'results',
      'past-session',
      'correct',
      'delete',
      'program',
      'changes',
      'unsaved',
      'findings',
    ],
    when: can.always,
    footer: 1,
  },
  {
    act: 'back',
    keys: ['esc'],
    label: 'back',
    screens: ['note', 'search', 'add-lift'],
    when: can.always,
    footer: 1,
  },
  {
    act: 'save',
    keys: ['enter'],
    label: 'keep the note',
    screens: ['note'],
    when: can.always,
    footer: 0,
  },
  {
    act: 'leave',
    keys: ['q', 'esc'],
    label: 'leave',
    screens: LEAVABLE,
    when: can.always,
    footer: 85,
  },
  ...WATCH_KEYS,
  ...PROGRAM_KEYS,
];

/** What a key of the keyboard is called; null for taps and pastes. */
export function keyName(key: Key): KeyName | null {
  if (key.kind === 'named') return key.name;
  if (key.kind === 'text') return key.text.toLowerCase();
  return null;
}

/** Rows of the table for a screen, in its order. */
export const bindingsOf = (screen: ScreenKind): readonly Binding[] =>
  KEYMAP.filter((one) => one.screens.includes(screen));

/** The row that a key means here. */
export const bindingFor = (screen: ScreenKind, name: KeyName): Binding | undefined =>
  bindingsOf(screen).find((one) => one.keys.includes(name));

export const labelOf = ({ label }: Binding, { session }: Model, phase: Phase | null): string =>
  typeof label === 'string' ? label : label(phase, Boolean(session?.pausedSince));

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

/** Acts of the runner that make no sense in a list: they move a mark or type. */
const NOT_LISTED: ReadonlySet<string> = new Set(['main', 'type', 'rub-out', 'interrupt', 'help']);

/** What the keys of the runner do now, for those who have only a finger. */
export function actsNow(
  model: Model,
): readonly { act: Binding['act']; label: string; key: string }[] {
  const phase = model.session ? phaseOf(model.session, model.now) : null;
  const inRunner: Model = { ...model, ui: { ...model.ui, screen: RUNNER } };
  return bindingsOf('runner')
    .filter(({ act, when }) => !NOT_LISTED.has(act) && when(inRunner, phase) === true)
    .map((row) => ({
      act: row.act,
      label: labelOf(row, inRunner, phase),
      key: shownKey(row.keys[0] ?? ''),
    }));
}
