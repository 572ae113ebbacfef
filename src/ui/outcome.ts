import type { Coach } from '../lifter/coach.ts';
import type { SessionCommand } from '../session/command.ts';
import type { Effect } from './effect.ts';
import type { Phase } from './phase.ts';
import type { Model, Screen, Typing, UiState } from './ui-state.ts';

/** What a key leads to. */
export interface Outcome {
  readonly ui: UiState;
  readonly effects: readonly Effect[];
}

/** A screen that is shown, with all that it may look at. */
export interface Seen<S extends Screen = Screen> {
  readonly screen: S;
  readonly model: Model;
  readonly phase: Phase | null;
  readonly coach: Coach;
}

/** `name`: the key that was pressed. */
export interface Acting<S extends Screen = Screen> extends Seen<S> {
  readonly name: string;
}

export type Act<S extends Screen = Screen> = (acting: Acting<S>) => Outcome;

/** Another screen, or the same with other contents. */
export const show = ({ model }: Pick<Seen, 'model'>, screen: Screen): Outcome => ({
  ui: { ...model.ui, screen, message: null },
  effects: [],
});

/** One sentence about the key, nothing else. */
export const tell = ({ model }: Pick<Seen, 'model'>, message: string): Outcome => ({
  ui: { ...model.ui, message },
  effects: [],
});

/** The same screen, and effects. */
export const ask = ({ model }: Pick<Seen, 'model'>, ...effects: Effect[]): Outcome => ({
  ui: { ...model.ui, message: null },
  effects,
});

/** Sends commands; the screen becomes `to` once they are done. */
export const send = (
  acting: Pick<Seen, 'model'>,
  commands: readonly SessionCommand[],
  to?: Screen,
): Outcome => ask(acting, to ? { do: 'send', commands, to } : { do: 'send', commands });

export const RUNNER: Screen = { kind: 'runner', draft: null };

/** The runner with another draft. */
export const withDraft = (acting: Pick<Seen, 'model'>, draft: Typing | null): Outcome =>
  show(acting, { kind: 'runner', draft });

export const draftOf = ({ ui }: Model): Typing | null =>
  ui.screen.kind === 'runner' ? ui.screen.draft : null;
