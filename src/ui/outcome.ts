import type { RecordChange } from '../lifter/change-past.ts';
import type { Sheet } from '../lifter/change-program.ts';
import type { Choices, Coach, PainAnswer } from '../lifter/coach.ts';
import type { SessionCommand } from '../session/command.ts';
import type { Answers } from '../settings/answers-schema.ts';
import type { Key } from '../terminal/key-decoder.ts';
import type { Gear } from '../training/gear.ts';
import type { Model, UiState } from './model.ts';
import type { Phase } from './phase.ts';
import type { Destination } from './screen-after.ts';
import type { Screen, Typing } from './ui-state.ts';

/** What a key asks of the world outside the screens; carried out in one place. */
export type Effect =
  /** Opens the day's session and shows the runner, at an exercise where one was chosen. */
  | {
      readonly do: 'begin';
      readonly day: string;
      readonly within: number | null;
      readonly exercise: number | null;
    }
  /**
   * Sends commands in order, stops at the first problem, and shows `to` when there was none; the last
   * may answer what was asked before the first set on a track.
   */
  | {
      readonly do: 'send';
      readonly commands: readonly SessionCommand[];
      readonly to?: Screen;
      readonly answers?: string;
    }
  /** Keeps what the lifter says to last time's pain: progression reads it, today and next time. */
  | { readonly do: 'answer-pain'; readonly track: string; readonly answer: PainAnswer }
  /** Keeps the choices and shows `to`. */
  | { readonly do: 'keep'; readonly choices: Choices; readonly to?: Screen }
  /** Adds to, or changes, what is recorded, and shows the screen that this leads to. */
  | { readonly do: 'change'; readonly change: RecordChange; readonly to: Destination }
  /** Writes the program file and shows the screen that this leads to. */
  | { readonly do: 'save-program'; readonly sheet: Sheet; readonly to: Destination }
  /** Hands a key to the text field that has the focus. */
  | { readonly do: 'type'; readonly key: Key }
  /** Remembers where the questions of a new program stand. */
  | { readonly do: 'keep-answers'; readonly answers: Answers }
  /** Makes the program of the answers the one in use, and shows what is due by it. */
  | { readonly do: 'take-draft'; readonly answers: Answers }
  /** Keeps what is owned, and goes back to the preview. */
  | { readonly do: 'keep-gear'; readonly gear: Gear }
  /** Out of holdfast, or into the demo and back. */
  | { readonly do: 'leave'; readonly status: number; readonly onto?: 'demo' };

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
