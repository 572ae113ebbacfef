import type { KeyName } from '../screen.ts';

export type FormAct =
  | 'up'
  | 'down'
  | 'next-field'
  | 'field-before'
  | 'more'
  | 'less'
  | 'type'
  | 'rub-out'
  | 'add'
  | 'remove'
  | 'undo'
  | 'save'
  | 'leave'
  | 'interrupt'
  | 'help';

export interface FormKey {
  readonly act: FormAct;
  readonly keys: readonly KeyName[];
  /** In at most three words. */
  readonly label: string;
  /** Keys of one label stand together in the footer; false keeps the row to the help. */
  readonly footer: boolean;
}

/** Every key of the form, the most useful first. While something is added, all but ctrl-c is text. */
export const FORM_KEYS: readonly FormKey[] = [
  { act: 'interrupt', keys: ['ctrl-c'], label: 'leave at once', footer: false },
  { act: 'up', keys: ['up'], label: 'thing', footer: true },
  { act: 'down', keys: ['down'], label: 'thing', footer: true },
  { act: 'less', keys: ['left', '-'], label: 'change', footer: true },
  { act: 'more', keys: ['right', '+', 'space'], label: 'change', footer: true },
  { act: 'save', keys: ['enter'], label: 'save', footer: true },
  { act: 'leave', keys: ['esc', 'q'], label: 'leave', footer: true },
  { act: 'add', keys: ['a'], label: 'add', footer: true },
  { act: 'remove', keys: ['d', 'delete'], label: 'remove', footer: true },
  { act: 'undo', keys: ['u'], label: 'undo', footer: true },
  { act: 'next-field', keys: ['tab'], label: 'next value', footer: true },
  { act: 'field-before', keys: ['shift-tab'], label: 'value before', footer: false },
  { act: 'type', keys: [...'0123456789.,'], label: 'type a number', footer: false },
  { act: 'rub-out', keys: ['backspace'], label: 'rub out', footer: false },
  { act: 'help', keys: ['?'], label: 'keys', footer: true },
];
