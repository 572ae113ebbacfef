import type { SetResult } from '../progression/past.ts';
import type { LiftSummary } from '../report/lift-rows.ts';
import type { Quantity } from '../training/mass.ts';
import type {
  Advice,
  PastSession,
  ProgramEdit,
  ReviewPage,
  Weighing,
} from '../workbench/look-back.ts';
import type { Field, Screen, Typing } from './ui-state.ts';

/** The lifts that have results. */
export interface LiftsScreen {
  readonly kind: 'lifts';
  readonly lifts: readonly LiftSummary[];
  /** What is searched for; empty for everything. */
  readonly query: string;
  readonly chosen: number;
}

/** The sessions of one lift, newest first. */
export interface ResultsScreen {
  readonly kind: 'results';
  readonly lift: string;
  readonly results: readonly PastSession[];
  readonly query: string;
  readonly chosen: number;
}

/** One session of a lift, set by set. */
export interface PastSessionScreen {
  readonly kind: 'past-session';
  readonly past: PastSession;
  /** Row chosen: a set, or behind them the whole session. */
  readonly chosen: number;
  readonly back: ResultsScreen;
}

/** Screens that look at the past: the weekly review, weigh-ins and results. */
export type WatchScreen =
  /** Asked once, before anything is said about losing weight. */
  | { readonly kind: 'weight-question'; readonly scroll: number }
  | {
      readonly kind: 'review';
      readonly page: ReviewPage;
      /** Which of the findings keys act on. */
      readonly chosen: number;
      readonly scroll: number;
    }
  | {
      readonly kind: 'advice';
      readonly advice: Advice;
      readonly edit: ProgramEdit;
      readonly back: Screen;
      readonly scroll: number;
    }
  | {
      readonly kind: 'weigh';
      readonly weighing: Weighing;
      readonly typed: string;
      /** What was doubted: typed once more it is kept. */
      readonly doubted: Quantity | null;
    }
  | LiftsScreen
  | ResultsScreen
  | PastSessionScreen
  | {
      readonly kind: 'correct';
      readonly set: SetResult;
      readonly field: Field;
      readonly typed: Typing['typed'];
      readonly back: PastSessionScreen;
    }
  | {
      readonly kind: 'delete';
      /** Id of a set or a session. */
      readonly of: string;
      readonly words: string;
      readonly chosen: number;
      readonly back: PastSessionScreen;
    }
  | {
      readonly kind: 'search';
      readonly typed: string;
      readonly back: LiftsScreen | ResultsScreen;
    };
