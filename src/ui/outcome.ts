import type { SessionCommand } from '../session/command.ts';
import type { Bench } from '../workbench/bench.ts';
import type { Effect } from './effect.ts';
import type { Phase } from './phase.ts';
import type { Model, Screen, Typing, UiState } from './ui-state.ts';

/** What a key leads to. */
export interface Outcome {
  readonly ui: UiState;
  readonly effects: readonly Effect[];
}

/** What an act may look at. `name` is the key that was pressed. */
export interface Acting {
  readonly model: Model;
  readonly phase: Phase | null;
  readonly bench: Bench;
  readonly name: string;
}

export type Act = (acting: Acting) => Outcome;

/** Another screen, or the same with other contents. */
export const show = ({ model }: Acting, screen: Screen): Outcome => ({
  ui: { ...model.ui, screen, message: null },
  effects: [],
});

/** One sentence about the key, nothing else. */
export const tell = ({ model }: Acting, message: string): Outcome => ({
  ui: { ...model.ui, message },
  effects: [],
});

/** The same screen, and effects. */
export const ask = ({ model }: Acting, ...effects: Effect[]): Outcome => ({
  ui: { ...model.ui, message: null },
  effects,
});

/** Sends commands; the screen becomes `to` once they are done. */
export const send = (acting: Acting, commands: readonly SessionCommand[], to?: Screen): Outcome =>
  ask(acting, to ? { do: 'send', commands, to } : { do: 'send', commands });

export const RUNNER: Screen = { kind: 'runner', draft: null };

/** The runner with another draft. */
export const withDraft = (acting: Acting, draft: Typing | null): Outcome =>
  show(acting, { kind: 'runner', draft });

export const draftOf = ({ ui }: Model): Typing | null =>
  ui.screen.kind === 'runner' ? ui.screen.draft : null;

/** One row of a list to choose from. */
export interface Choice {
  readonly label: string;
  /** A quieter word behind it. */
  readonly detail?: string;
  readonly effects: readonly Effect[];
  /** Shown at once, where no effect has to be carried out first. */
  readonly to?: Screen;
}

export interface ChoiceList {
  readonly title: string;
  readonly words: string | null;
  readonly choices: readonly Choice[];
}
