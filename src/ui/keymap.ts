import type { Key } from '../terminal/key.ts';
import type { Phase } from './phase.ts';
import { PROGRAM_KEYS } from './program-keys.ts';
import type { Model, ScreenKind } from './ui-state.ts';
import { WATCH_KEYS } from './watch-keys.ts';
import { can } from './when.ts';

/** What a key is called in the table and on the screen. */
export type KeyName = string;

export type ActId =
  | 'main'
  | 'save'
  | 'undo'
  | 'redo'
  | 'type'
  | 'rub-out'
  | 'more'
  | 'less'
  | 'next-field'
  | 'field-before'
  | 'set-before'
  | 'set-after'
  | 'not-yet'
  | 'longer'
  | 'shorter'
  | 'pause'
  | 'take-offer'
  | 'change-load'
  | 'add-set'
  | 'skip-set'
  | 'end-cluster'
  | 'exercises'
  | 'swap'
  | 'leave-out'
  | 'pain'
  | 'note'
  | 'why'
  | 'finish'
  | 'settings'
  | 'choose'
  | 'choice-up'
  | 'choice-down'
  | 'page-up'
  | 'page-down'
  | 'read-on'
  | 'other-day'
  | 'yes'
  | 'no'
  | 'back'
  | 'leave'
  | 'interrupt'
  | 'help'
  | 'review'
  | 'history'
  | 'weigh'
  | 'take-advice'
  | 'refuse'
  | 'next-advice'
  | 'search'
  | 'correct'
  | 'delete'
  | 'program'
  | 'findings'
  | 'earlier'
  | 'later'
  | 'add-lift'
  | 'take-back';

export interface Binding {
  readonly act: ActId;
  readonly keys: readonly KeyName[];
  /** What the key does, in at most three words; by phase where it differs. */
  readonly label: string | ((phase: Phase | null, paused: boolean) => string);
  readonly screens: readonly ScreenKind[];
  /** True, or the sentence why the key does nothing now. */
  readonly when: (model: Model, phase: Phase | null) => true | string;
  /** Place in the footer, the lowest first; null keeps it to the help. */
  readonly footer: number | null;
  /** What the footer says of this row and those of the same place together. */
  readonly pair?: string;
}

const DIGITS = [...'0123456789'];
const LISTS: readonly ScreenKind[] = [
  'discard',
  'exercises',
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

const MAIN_LABELS: Readonly<Record<Phase['kind'], string>> = {
  ready: 'lift',
  lifting: 'put down',
  resting: 'lift now',
  over: 'lift',
  'all-done': 'finish',
  closed: 'summary',
};

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
  {
    act: 'main',
    keys: ['space'],
    label: (phase, paused) => (paused ? 'go on' : MAIN_LABELS[phase?.kind ?? 'ready']),
    screens: ['runner'],
    when: can.act,
    footer: 0,
  },
  {
    act: 'save',
    keys: ['enter'],
    label: 'save numbers',
    screens: ['runner'],
    when: can.save,
    footer: 2,
  },
  {
    act: 'type',
    keys: [...DIGITS, '.', ','],
    label: 'type reps',
    screens: ['runner'],
    when: can.type,
    footer: null,
  },
  {
    act: 'rub-out',
    keys: ['backspace', 'delete'],
    label: 'rub out',
    screens: ['runner'],
    when: can.type,
    footer: null,
  },
  {
    act: 'more',
    keys: ['up'],
    label: 'one more',
    screens: ['runner'],
    when: can.type,
    footer: 4,
    pair: 'more, less',
  },
  {
    act: 'less',
    keys: ['down'],
    label: 'one less',
    screens: ['runner'],
    when: can.type,
    footer: 4,
    pair: 'more, less',
  },
  {
    act: 'next-field',
    keys: ['right', 'tab'],
    label: 'next number',
    screens: ['runner'],
    when: can.type,
    footer: 5,
  },
  {
    act: 'field-before',
    keys: ['left', 'shift-tab'],
    label: 'number before',
    screens: ['runner'],
    when: can.type,
    footer: null,
  },
  { act: 'undo', keys: ['u'], label: 'undo', screens: ['runner'], when: can.undo, footer: 1 },
  {
    act: 'redo',
    keys: ['y'],
    label: 'take the undo back',
    screens: ['runner'],
    when: can.redo,
    footer: 3,
  },
  {
    act: 'take-offer',
    keys: ['o'],
    label: 'take the offer',
    screens: ['runner'],
    when: can.takeOffer,
    footer: 3,
  },
  {
    act: 'set-before',
    keys: ['b'],
    label: 'set before',
    screens: ['runner'],
    when: can.goBack,
    footer: 6,
  },
  {
    act: 'set-after',
    keys: ['v'],
    label: 'set after',
    screens: ['runner'],
    when: can.goForth,
    footer: null,
  },
  {
    act: 'not-yet',
    keys: ['r'],
    label: 'not started yet',
    screens: ['runner'],
    when: can.withdraw,
    footer: 4,
  },
  {
    act: 'longer',
    keys: ['+', '='],
    label: 'longer rest',
    screens: ['runner'],
    when: can.changeRest,
    footer: 7,
    pair: 'longer, shorter rest',
  },
  {
    act: 'shorter',
    keys: ['-', '_'],
    label: 'shorter rest',
    screens: ['runner'],
    when: can.changeRest,
    footer: 7,
    pair: 'longer, shorter rest',
  },
  {
    act: 'pause',
    keys: ['p'],
    label: 'pause or go on',
    screens: ['runner'],
    when: can.pause,
    footer: 8,
  },
  {
    act: 'end-cluster',
    keys: ['e'],
    label: 'end the cluster',
    screens: ['runner'],
    when: can.endCluster,
    footer: 3,
  },
  {
    act: 'change-load',
    keys: ['c'],
    label: 'change the load',
    screens: ['runner'],
    when: can.changeLoad,
    footer: 9,
  },
  {
    act: 'pain',
    keys: ['m'],
    label: 'mark pain',
    screens: ['runner'],
    when: can.changeExercise,
    footer: 9,
  },
  {
    act: 'note',
    keys: ['n'],
    label: 'write a note',
    screens: ['runner'],
    when: can.inSession,
    footer: 10,
  },
  {
    act: 'why',
    keys: ['w'],
    label: 'why this',
    screens: ['runner', 'preview'],
    when: can.askWhy,
    footer: 2,
  },
  {
    act: 'add-set',
    keys: ['a'],
    label: 'add a set',
    screens: ['runner'],
    when: can.addSet,
    footer: 11,
  },
  {
    act: 'skip-set',
    keys: ['s'],
    label: 'skip this set',
    screens: ['runner'],
    when: can.skipSet,
    footer: 11,
  },
  {
    act: 'exercises',
    keys: ['x'],
    label: 'all exercises',
    screens: ['runner'],
    when: can.inSession,
    footer: 9,
  },
  {
    act: 'finish',
    keys: ['f'],
    label: 'finish early',
    screens: ['runner'],
    when: can.finish,
    footer: 12,
  },
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
    keys: ['space', 'enter'],
    label: 'begin',
    screens: ['preview'],
    when: can.begin,
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
    footer: 1,
    pair: 'heavier, lighter',
  },
  {
    act: 'less',
    keys: ['down'],
    label: 'next lighter',
    screens: ['load'],
    when: can.always,
    footer: 1,
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
    footer: 80,
  },
  {
    act: 'back',
    keys: ['esc'],
    label: 'back',
    screens: ['note', 'search', 'add-lift'],
    when: can.always,
    footer: 80,
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
