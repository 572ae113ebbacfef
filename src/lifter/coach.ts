import type { Decision, DoneExercise } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionCommand } from '../session/command.ts';
import type { Settings } from '../settings/settings.ts';
import type { SetExpected } from '../strength/set-expected.ts';
import type { Problem } from '../text/problem.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { ProgramEditor } from './change-program.ts';
import type { Drafting } from './drafting.ts';
import type { MadeUp, NearLoads } from './gear.ts';
import type { LookBack } from './look-back.ts';
import type { Today } from './prepare.ts';
import type { ReasonShown } from './rules.ts';
import type { LiveSession } from './run-session.ts';
import type { SessionReview } from './session-review.ts';

/** What the lifter may say to last time's pain. */
export type PainAnswer = Exclude<Decision['answer'], 'yes' | 'no'>;

/** A change of an exercise that the lifter may take with one key. */
export interface Offer {
  /** Position of the exercise in the session. */
  readonly exercise: number;
  readonly by: PrescribedExercise;
  /** One sentence: what changes and why. */
  readonly words: string;
  /** No set is left of the exercise: it takes one more. */
  readonly addsSet: boolean;
}

/** Settings that the screens read and change. */
export type Choices = Pick<
  Settings,
  'bell' | 'flash' | 'speech' | 'spoken' | 'notification' | 'taps' | 'theme' | 'cautions'
>;

/**
 * What the screens ask. Everything answers at once; only `begin`, `keep`, the
 * session's `send`, the `change` of `lookBack`, and what `editor` and `drafting` name change anything.
 */
export interface Coach {
  /** The day that is due, or the one named, cut to the minutes there are (as asked for last where left out; null: whole). */
  readonly today: (day?: string, within?: number | null) => Today;
  /** Opens the session of a day (the one due by default), or goes on with the one that is open. */
  readonly begin: (day?: string, within?: number | null) => LiveSession | Problem;
  /** The session that is open, also after it was closed in this run; null before. */
  readonly live: () => LiveSession | null;
  /** From what the sets of the live session have left on bars, handles and belt. */
  readonly madeUp: (exercise: PrescribedExercise, load: Mass) => MadeUp | null;
  /** Lifts for the same muscles that the gear of today allows, the most alike first, each prescribed from history. */
  readonly alternatives: (exercise: PrescribedExercise) => readonly PrescribedExercise[];
  /** Minutes that what is left of the live session takes. */
  readonly minutesLeft: () => number;
  /** What is left of the live session cut to so many minutes: what to send to it. */
  readonly shortenTo: (minutes: number) => SessionCommand;
  readonly hasAlternatives: (exercise: PrescribedExercise) => boolean;
  /** The exercise at another load, its warm-ups and aims worked out again. */
  readonly withLoad: (exercise: PrescribedExercise, load: Mass) => PrescribedExercise;
  /** An easier load of the same lift, for pain; null where nothing lighter can be made. */
  readonly lighter: (exercise: PrescribedExercise) => PrescribedExercise | null;
  /** The exercise as it is when last time's pain is gone. */
  readonly painGone: (exercise: PrescribedExercise) => PrescribedExercise;
  /** Records what the lifter says to last time's pain at a track. */
  readonly answerPain: (track: string, answer: PainAnswer) => Problem | null;
  /** A better load for the sets that are left of exercise `index` of the live session, if there is one. */
  readonly offer: (index: number) => Offer | null;
  /** Loads near `wish`, in the exercise's own basis. */
  readonly nearestLoads: (exercise: DoneExercise, wish: Mass) => NearLoads;
  readonly reasonWords: (reason: Reason) => ReasonShown;
  /** What its sets are likely to bring today; null where too little is known. */
  readonly expected: (exercise: PrescribedExercise) => readonly SetExpected[] | null;
  /** Of the live session, once it is closed. */
  readonly review: () => SessionReview;
  readonly choices: () => Choices;
  readonly keep: (choices: Choices) => Problem | null;
  /** The past: review, history, weigh-ins. */
  readonly lookBack: LookBack;
  readonly editor: ProgramEditor;
  /** A new program, by questions. */
  readonly drafting: Drafting;
  /** Stands above every screen, where what is on it is not the lifter's own; null otherwise. */
  readonly banner: { readonly whole: string; readonly short: string; readonly name: string } | null;
}
