import type { Decision } from '../progression/past.ts';
import type { PrescribedExercise, Prescription } from '../progression/prescription.ts';
import type { Settings } from '../settings/settings.ts';
import type { Problem } from '../text/problem.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { ProgramDesk } from './change-program.ts';
import type { Watch } from './look-back.ts';
import type { LiveSession } from './run-session.ts';

/** The session of a day, before it is begun. */
export interface Today {
  /** `open`: a session was begun and not closed; it goes on from its own copy. */
  readonly state: 'due' | 'open' | 'done-today';
  /** Id of the open session; null where none is open. */
  readonly session: string | null;
  /** Of an open session that another device went on with last: on which, since when. */
  readonly elsewhere: { readonly device: string; readonly since: string } | null;
  readonly prescription: Prescription;
  /** Minutes that the session is expected to take. */
  readonly minutes: number;
  /** Minutes that there are, where the lifter said so; also where the whole day fits into them. */
  readonly within: number | null;
  /** Names of the program's days, in its order. */
  readonly days: readonly string[];
}

/** How an implement is made up for a load. */
export interface MadeUp {
  /** `20 + 10 a side`, `empty bar`, `body weight + 10 on the belt`. */
  readonly words: string;
  /** `take off 5, put on 10 + 2.5 a side`, from what is loaded now; null where it is as it should be. */
  readonly change: string | null;
  /** Lines of a side view no wider than `width` columns; none where there is nothing to draw. */
  readonly picture: (width: number) => readonly string[];
}

/** A sentence for the lifter, and how well founded it is. */
export interface ReasonShown {
  readonly text: string;
  /** Citation, or `common practice`, or `ours`. */
  readonly source: string;
  /** Numbers that the rule used, ready to read: `last time` → `6, 5, 5 reps`. */
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}

/** The load wished for, where it can be made, and those next to it that can; null where there is none. */
export interface NearLoads {
  readonly below: Mass | null;
  readonly exact: Mass | null;
  readonly above: Mass | null;
}

/** What the lifter may say to last time's pain. */
export type PainAnswer = Exclude<Decision['answer'], 'yes' | 'no'>;

/** A change of an exercise that the lifter may take with one key. */
export interface Offer {
  readonly by: PrescribedExercise;
  /** One sentence: what changes and why. */
  readonly words: string;
}

/** What a finished session came to, beside what its own state shows. */
export interface SessionReview {
  readonly hardReps: number | null;
  /** Seconds spent in clusters, and what the same work takes as straight sets; null without clusters. */
  readonly clusters: { readonly spent: number; readonly asStraight: number } | null;
  /** One sentence each: `Back squat: best estimate so far, 98 kg (was 96.5).` */
  readonly bests: readonly string[];
  readonly next: readonly { readonly name: string; readonly plan: string; readonly why: string }[];
}

/** Settings that the screens read and change. */
export type Choices = Pick<
  Settings,
  'bell' | 'flash' | 'speech' | 'spoken' | 'notification' | 'taps' | 'theme' | 'cautions'
>;

/**
 * What the screens ask of the workbench. Everything answers at once; only `begin`, `keep`, the
 * session's `send` and the watch's `change` change anything.
 */
export interface Bench {
  /** The day that is due, or the one named, cut to the minutes there are (as asked for last where left out; null: whole). */
  readonly today: (day?: string, within?: number | null) => Today;
  /** Opens the session of a day (the one due by default), or goes on with the one that is open. */
  readonly begin: (day?: string, within?: number | null) => LiveSession | Problem;
  /** The session that is open, also after it was closed in this run; null before. */
  readonly live: () => LiveSession | null;
  /** From what the sets of the live session have left on bars, handles and belt. */
  readonly madeUp: (exercise: PrescribedExercise, load: Mass) => MadeUp | null;
  /** Lifts for the same muscles with the same loading, each prescribed from history. */
  readonly alternatives: (exercise: PrescribedExercise) => readonly PrescribedExercise[];
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
  readonly nearestLoads: (exercise: PrescribedExercise, wish: Mass) => NearLoads;
  readonly reasonWords: (reason: Reason) => ReasonShown;
  /** Of the live session, once it is closed. */
  readonly review: () => SessionReview;
  readonly choices: () => Choices;
  readonly keep: (choices: Choices) => Problem | null;
  /** The past: review, history, weigh-ins. */
  readonly watch: Watch;
  readonly desk: ProgramDesk;
  /** Stands above every screen, where what is on it is not the lifter's own; null otherwise. */
  readonly banner: string | null;
}
