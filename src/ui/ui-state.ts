import type { WeighIn } from '../journal/history.ts';
import type { ProgramEdit, Sheet } from '../lifter/change-program.ts';
import type { Advice, PastSession, ReviewPage, Weighing } from '../lifter/look-back.ts';
import type { Today } from '../lifter/prepare.ts';
import type { FindingWords } from '../lifter/rules.ts';
import type { GoalKey } from '../program/edit-program.ts';
import type { Hurt } from '../progression/hurts.ts';
import type { StrengthOn } from '../progression/lift-strength.ts';
import type { SetResult } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { LiftSummary } from '../report/lift-rows.ts';
import type { Answers, Question } from '../settings/answers-schema.ts';
import type { DiffLine } from '../text/line-diff.ts';
import type { Lift } from '../training/lift.ts';
import type { Unit } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { FormState } from './gear/form-state.ts';

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

/** Marked now, marked last time, or a joint hurts that the lift loads hard. */
export type PainMoment = 'now' | 'last-time' | 'joint';

/** Which screen is shown, with what only that screen knows. */
export type Screen =
  | { readonly kind: 'cautions'; readonly scroll: number }
  | { readonly kind: 'health'; readonly scroll: number }
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
      /** It was stepped to: what is typed next takes its place. */
      readonly isStepped?: boolean;
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
      /** What is to be known of the session as a whole. */
      readonly about: readonly string[];
      readonly exercises: readonly PrescribedExercise[];
      readonly back: Screen;
      readonly scroll: number;
    }
  | { readonly kind: 'finish'; readonly chosen: number }
  /** `minutes`: what the rest of the session takes as it is. */
  | { readonly kind: 'less-time'; readonly minutes: number; readonly chosen: number }
  | { readonly kind: 'discard'; readonly chosen: number; readonly back: Screen }
  | { readonly kind: 'settings'; readonly back: Screen; readonly chosen: number }
  | { readonly kind: 'summary'; readonly scroll: number }
  | LookBackScreen
  | ProgramScreen
  | SetUpScreen;

export type ScreenKind = Screen['kind'];

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
  /** Of the lift, over time. */
  readonly strength: readonly StrengthOn[];
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

/** A session of the past with all its lifts, to read. */
export interface WholeSessionScreen {
  readonly kind: 'whole-session';
  readonly lifts: readonly PastSession[];
  readonly back: PastSessionScreen;
  readonly scroll: number;
}

/** The weekly review. */
export interface ReviewScreen {
  readonly kind: 'review';
  readonly page: ReviewPage;
  /** Which of the findings keys act on. */
  readonly chosen: number;
  /** Is it shown where each sentence comes from? */
  readonly sources: boolean;
  readonly scroll: number;
}

/** Screens that look at the past: the weekly review, weigh-ins and results. */
export type LookBackScreen =
  /** Asked once, before anything is said about losing weight; `to`: what the answer leads to. */
  | {
      readonly kind: 'weight-question';
      readonly to: 'preview' | 'review';
      readonly scroll: number;
    }
  | ReviewScreen
  | {
      readonly kind: 'plan';
      /** Is the end of the cut asked about once more? */
      readonly isEnding: boolean;
      /** True, or why no weight or day can be aimed for. */
      readonly mayAim: true | string;
      readonly chosen: number;
      readonly back: ReviewScreen;
    }
  | {
      readonly kind: 'advice';
      readonly advice: Advice;
      readonly edit: ProgramEdit;
      readonly back: Screen;
      readonly scroll: number;
    }
  | {
      readonly kind: 'kits';
      readonly kits: readonly string[];
      /** The one of today; null: what is owned. */
      readonly now: string | null;
      readonly chosen: number;
    }
  | {
      readonly kind: 'week';
      /** Today's weekday, Monday 1. */
      readonly from: number;
      readonly days: readonly number[] | null;
      readonly chosen: number;
    }
  | { readonly kind: 'hurts'; readonly hurts: readonly Hurt[]; readonly chosen: number }
  | {
      readonly kind: 'goal';
      /** The program without what is typed here. */
      readonly sheet: Sheet;
      readonly field: GoalKey;
      readonly typed: Readonly<Record<GoalKey, string>>;
      /** Where it would lead; or why what is typed is none. */
      readonly words: readonly string[];
    }
  | {
      readonly kind: 'weigh';
      readonly of: 'weight' | 'waist';
      readonly weighing: Weighing;
      readonly typed: string;
      /** What was doubted: typed once more it is kept. */
      readonly doubted: number | null;
      /** The same of the other one, weight or waist, which is kept with it. */
      readonly aside: { readonly typed: string; readonly doubted: number | null };
    }
  /** Every weigh-in, the newest first. */
  | { readonly kind: 'readings'; readonly readings: readonly WeighIn[]; readonly chosen: number }
  | LiftsScreen
  | ResultsScreen
  | PastSessionScreen
  | WholeSessionScreen
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

/** The program, day by day; `chosen` is a row: each day is one, and each exercise. */
export interface SheetScreen {
  readonly kind: 'program';
  readonly sheet: Sheet;
  readonly chosen: number;
  /** The same before each change, the latest last. */
  readonly past: readonly SheetScreen[];
  /** The screen that it was opened from. */
  readonly back: Screen;
}

/** Screens about the program file. */
export type ProgramScreen =
  | SheetScreen
  | {
      readonly kind: 'add-lift';
      readonly back: SheetScreen;
      readonly typed: string;
      readonly lifts: readonly Lift[];
      readonly chosen: number;
    }
  | {
      readonly kind: 'changes';
      readonly back: SheetScreen;
      readonly lines: readonly DiffLine[];
      readonly scroll: number;
    }
  | { readonly kind: 'unsaved'; readonly back: SheetScreen; readonly chosen: number }
  | {
      readonly kind: 'findings';
      readonly findings: readonly FindingWords[];
      readonly file: string;
      readonly back: Screen;
      readonly scroll: number;
    };

/** A question that a new program comes from. */
export interface QuestionScreen {
  readonly kind: 'question';
  readonly answers: Answers;
  /** Row chosen. */
  readonly chosen: number;
  /** The question that esc goes no further back from. */
  readonly from: Question;
  /** Was it opened from the preview, which it then goes back to? */
  readonly again: boolean;
}

/** Screens that lead to a program, and the form of what is owned. */
export type SetUpScreen =
  | QuestionScreen
  | {
      readonly kind: 'best';
      readonly lift: Lift;
      readonly field: 'load' | 'reps';
      readonly load: string;
      readonly reps: string;
      readonly back: QuestionScreen;
    }
  | { readonly kind: 'drafted'; readonly question: QuestionScreen; readonly scroll: number }
  /** Back to a question, which takes the gear over, or to the preview, before which it is kept. */
  | { readonly kind: 'gear'; readonly form: FormState; readonly back: QuestionScreen | null };
