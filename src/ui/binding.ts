import type { Phase } from './phase.ts';
import type { Model, ScreenKind } from './ui-state.ts';

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
  | 'failed'
  | 'begin-here'
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
  | 'less-time'
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

/** Keys that type a number. */
export const DIGITS: readonly KeyName[] = [...'0123456789'];
