import type { Choices, Offer } from '../lifter/coach.ts';
import type { SessionState } from '../session/state.ts';
import type { Reading } from '../training/reading.ts';
import type { Screen } from './ui-state.ts';

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

export interface Answered {
  /** Track of the lift that it was asked of. */
  readonly track: string;
  /** Id of the event: an answer that is taken back is none. */
  readonly by: string;
}

export interface UiState {
  readonly screen: Screen;
  /** The keys of here, laid over the screen. */
  readonly help: { readonly scroll: number } | null;
  /** One sentence about the last key: a problem, or why the key does nothing now. */
  readonly message: string | null;
  /** The key pressed last, to tell a key that is held or bounces from one that is meant. */
  readonly lastKey: { readonly name: string; readonly at: Reading } | null;
  /** What was asked before the first set of a lift, and the events that answered it in this run. */
  readonly answered: readonly Answered[];
}

/** All that a frame is drawn from. */
export interface Model {
  readonly ui: UiState;
  readonly session: SessionState | null;
  readonly now: Reading;
  readonly size: Size;
  readonly choices: Choices;
  /** A better load for the sets that are left of the present exercise. */
  readonly offer: Offer | null;
}

export const atStart = (screen: Screen): UiState => ({
  screen,
  help: null,
  message: null,
  lastKey: null,
  answered: [],
});
