import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionState } from '../session/state.ts';
import type { Unit } from '../training/mass.ts';
import type { Reading } from '../training/reading.ts';
import type { Reason } from '../training/rule.ts';
import type { Choices, Offer, Today } from '../workbench/bench.ts';
import type { ProgramScreen } from './program-screen.ts';
import type { WatchScreen } from './watch-screen.ts';

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

export type Field = 'count' | 'reserve' | 'load';

/** Numbers that are being typed over those of a set. */
export interface Typing {
  /** Id of a set that was put down; null: the set that is being lifted. */
  readonly of: string | null;
  readonly field: Field;
  /** What was typed into each field, as it was typed. */
  readonly typed: Readonly<Partial<Record<Field, string>>>;
}

/** Why a load is asked for. */
export type LoadPurpose = 'first-session' | 'change';

export type PainMoment = 'now' | 'last-time';

/** Which screen is shown, with what only that screen knows. */
export type Screen =
  | { readonly kind: 'cautions'; readonly scroll: number }
  | {
      readonly kind: 'preview';
      readonly today: Today;
      readonly chosen: number;
    }
  | { readonly kind: 'stale'; readonly chosen: number }
  | { readonly kind: 'runner'; readonly draft: Typing | null }
  | {
      readonly kind: 'load';
      readonly exercise: number;
      readonly purpose: LoadPurpose;
      readonly typed: string;
    }
  | { readonly kind: 'exercises'; readonly chosen: number }
  /** All that can be done now, for fingers. */
  | { readonly kind: 'acts'; readonly chosen: number }
  | {
      readonly kind: 'swap';
      readonly exercise: number;
      readonly lifts: readonly PrescribedExercise[];
      readonly chosen: number;
      readonly back: Screen;
    }
  | {
      readonly kind: 'pain';
      readonly exercise: number;
      readonly moment: PainMoment;
      readonly chosen: number;
    }
  | { readonly kind: 'note'; readonly exercise: number | null }
  | {
      readonly kind: 'why';
      readonly unit: Unit;
      /** What was cut from a day for want of time. */
      readonly cut: readonly Reason[];
      readonly exercises: readonly PrescribedExercise[];
      readonly back: Screen;
      readonly scroll: number;
    }
  | { readonly kind: 'finish'; readonly chosen: number }
  | { readonly kind: 'discard'; readonly chosen: number; readonly back: Screen }
  | { readonly kind: 'settings'; readonly back: Screen; readonly chosen: number }
  | { readonly kind: 'summary'; readonly scroll: number }
  | WatchScreen
  | ProgramScreen;

export type ScreenKind = Screen['kind'];

export interface UiState {
  readonly screen: Screen;
  /** The keys of here, laid over the screen. */
  readonly help: { readonly scroll: number } | null;
  /** One sentence about the last key: a problem, or why the key does nothing now. */
  readonly message: string | null;
  /** The key pressed last, to tell a key that is held or bounces from one that is meant. */
  readonly lastKey: { readonly name: string; readonly at: Reading } | null;
  /** Exercises whose pain of last time was asked about in this run. */
  readonly painAsked: readonly number[];
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
  painAsked: [],
});
