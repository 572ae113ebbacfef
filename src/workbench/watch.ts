import type { Temporal } from 'temporal-polyfill';
import type { Finding } from '../cut/finding.ts';
import type { Review } from '../cut/review.ts';
import type { WeighInDoubt } from '../cut/weigh-in-doubt.ts';
import type { Decision } from '../progression/past.ts';
import type { LiftRow } from '../report/lift-rows.ts';
import type { LiftSummary } from '../report/lift-summaries.ts';
import type { SetNumbers } from '../session/events.ts';
import type { Settings } from '../settings/settings.ts';
import type { DiffLine } from '../text/line-diff.ts';
import type { Problem } from '../text/problem.ts';
import type { Mass, Unit } from '../training/mass.ts';

/** One thing that the review found, in words, and what can be said to it. */
export interface Advice {
  readonly finding: Finding;
  readonly text: string;
  readonly source: string;
  readonly mayTake: boolean;
  readonly mayRefuse: boolean;
}

export interface ReviewPage {
  readonly review: Review;
  readonly unit: Unit;
  /** The verdict first. */
  readonly advice: readonly Advice[];
}

/** What taking an advice does to the program file. */
export interface ProgramEdit {
  readonly path: string;
  /** The text as it was shown, and as it will be. */
  readonly before: string;
  readonly after: string;
  /** Day, lift and numbers of each change, as the text has them. */
  readonly where: readonly string[];
  readonly lines: readonly DiffLine[];
}

/** What the lifter sees before stepping on the scales. */
export interface Weighing {
  readonly date: Temporal.PlainDate;
  readonly unit: Unit;
  /** The reading before, and what the trend makes of all of them; none before the first. */
  readonly words: readonly string[];
  /** The id of that reading. */
  readonly last: string | null;
}

/** One session of a lift, with its sets as they can be corrected. */
export interface PastSession {
  readonly session: string;
  readonly row: LiftRow;
  readonly unit: Unit;
  readonly notes: readonly string[];
}

/** Something that the lifter adds to, or changes in, what is recorded. */
export type Change =
  | { readonly kind: 'weigh'; readonly mass: Mass }
  | {
      readonly kind: 'answer';
      readonly finding: Finding;
      readonly answer: Extract<Decision['answer'], 'yes' | 'no'>;
      /** What was shown of the program file and is written with a yes; null where nothing is. */
      readonly edit: ProgramEdit | null;
    }
  | { readonly kind: 'weight-advice'; readonly answer: 'yes' | 'no' }
  | { readonly kind: 'correct'; readonly set: string; readonly numbers: Partial<SetNumbers> }
  /** `of`: a set, a session or a weigh-in. */
  | { readonly kind: 'delete'; readonly of: string }
  /** The last change of this run never happened. */
  | { readonly kind: 'take-back' };

/** What a change came to, in a sentence for the lifter. */
export interface Changed {
  readonly said: string;
}

/** What the screens ask of the past. Everything answers at once; only `change` changes anything. */
export interface Watch {
  /** Unit of the program in use. */
  readonly unit: () => Unit;
  /** The weekly review. @throws Refusal when the program cannot be read. */
  readonly review: () => ReviewPage;
  readonly weightAdvice: () => Settings['weightAdvice'];
  /** What a yes would change in the program file; nothing is written yet. */
  readonly programEdit: (finding: Finding) => ProgramEdit | Problem;
  readonly weighing: () => Weighing;
  readonly doubt: (mass: Mass) => WeighInDoubt | null;
  /** Lifts with results that every word of `query` fits, the one done last first. */
  readonly lifts: (query: string) => readonly LiftSummary[];
  /** Sessions of a lift that every word of `query` fits, newest first. */
  readonly results: (lift: string, query: string) => readonly PastSession[];
  readonly change: (change: Change) => Changed | Problem;
}
