import type { Temporal } from 'temporal-polyfill';
import { answersTo } from '../cut/answers.ts';
import type { ReviewFinding } from '../cut/finding.ts';
import { rateOfLoss } from '../cut/rate-of-loss.ts';
import { type Review, review } from '../cut/review.ts';
import { type WeighInDoubt, weighInDoubt } from '../cut/weigh-in-doubt.ts';
import type { History } from '../journal/history.ts';
import type { Decision } from '../progression/past.ts';
import {
  type LiftSession,
  type LiftSummary,
  liftRows,
  liftSummaries,
  searchHistory,
} from '../report/lift-rows.ts';
import type { SetNumbers } from '../session/events.ts';
import type { Settings } from '../settings/settings.ts';
import { dayWords } from '../text/day-words.ts';
import type { DiffLine } from '../text/line-diff.ts';
import type { Problem } from '../text/problem.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import { pastChanger, type SettingsDesk } from './change-past.ts';
import { programEdit } from './change-program.ts';
import { orProblem } from './once.ts';
import type { Workbench } from './open-workbench.ts';
import { reasonWords } from './rules.ts';

/** Calendar weeks that the review on the screen looks back on. */
const WEEKS = 4;

/** The past as the screens ask for it. */
export function openWatch(workbench: Workbench, settings: SettingsDesk, unit: () => Unit): Watch {
  const history = () => workbench.journal().history();
  const advises = () => settings.now().weightAdvice === 'yes';
  const changePast = pastChanger(workbench, settings, unit);
  const found = (query: string) => searchHistory(history().results, query, sessionNotes(history()));

  return {
    unit,
    weightAdvice: () => settings.now().weightAdvice,
    review: () => {
      const review = reviewOf(workbench, WEEKS, settings.now());
      const program = workbench.program();
      const { headline, below } = review.verdict;
      const advice = [headline, ...below].map((finding): Advice => {
        const { text, source } = reasonWords(finding.reason, program.unit);
        const { yes, no } = answersTo(finding);
        return { finding, text, source, mayTake: yes, mayRefuse: no };
      });
      return { review, unit: program.unit, advice };
    },
    programEdit: ({ changes }) => orProblem(() => programEdit(workbench, changes)),
    weighing: () => {
      const date = workbench.today();
      const before = history().weighIns.at(-1);
      const words = [
        before ? `Last: ${massText(before.mass, unit())} on ${dayWords(before.date)}.` : null,
        trendWords(history(), date, unit(), advises()),
      ];
      return {
        date,
        unit: unit(),
        last: before?.id ?? null,
        words: words.filter((each) => each !== null),
      };
    },
    doubt: (mass) => weighInDoubt(mass, workbench.today(), history().weighIns, unit()),
    lifts: (query) => liftSummaries(liftRows(found(query), null, history().bodyMassOn)),
    results: (lift, query) => {
      const { closed, bodyMassOn } = history();
      const sessions = new Map(closed().map((state) => [state.session, state]));
      const notesOf = sessionNotes({ closed });
      return liftRows(found(query), lift, bodyMassOn)
        .toReversed()
        .map((row): PastSession => {
          const { session } = row.result;
          const state = sessions.get(session);
          const own = state?.prescription.unit ?? unit();
          return { session, row, unit: own, notes: notesOf(session) };
        });
    },
    change: (change) => orProblem(() => ({ said: changePast(change) })),
  };
}

/** One thing that the review found, in words, and what can be said to it. */
export interface Advice {
  readonly finding: ReviewFinding;
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
  readonly row: LiftSession;
  readonly unit: Unit;
  readonly notes: readonly string[];
}

/** Something that the lifter adds to, or changes in, what is recorded. */
export type RecordChange =
  | { readonly kind: 'weigh'; readonly mass: Mass }
  | {
      readonly kind: 'answer';
      readonly finding: ReviewFinding;
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
  readonly programEdit: (finding: ReviewFinding) => ProgramEdit | Problem;
  readonly weighing: () => Weighing;
  readonly doubt: (mass: Mass) => WeighInDoubt | null;
  /** Lifts with results that every word of `query` fits, the one done last first. */
  readonly lifts: (query: string) => readonly LiftSummary[];
  /** Sessions of a lift that every word of `query` fits, newest first. */
  readonly results: (lift: string, query: string) => readonly PastSession[];
  readonly change: (change: RecordChange) => Changed | Problem;
}

/** The review of the last `weeks` calendar weeks; weight is spoken of only to who asked for it. */
export function reviewOf(
  workbench: Workbench,
  weeks: number,
  { weightAdvice } = workbench.settings().settings,
): Review {
  const history = workbench.journal().history();
  return review(
    {
      program: workbench.program(),
      past: history,
      weighIns: history.weighIns,
      today: workbench.today(),
      weightAdvice: weightAdvice === 'yes',
    },
    weeks,
  );
}

/**
 * `Trend 79.4 kg, falling by 0.7 % a week (± 0.1).`; without the rate for who gets no advice on
 * weight, and null before the first weigh-in.
 */
export function trendWords(
  { weighIns, bodyMassOn }: Pick<History, 'weighIns' | 'bodyMassOn'>,
  on: Temporal.PlainDate,
  unit: Unit,
  weightAdvice: boolean,
): string | null {
  const trend = bodyMassOn(on);
  if (trend === null) return null;
  const words = `Trend ${massText(trend, unit, 1)}`;
  if (!weightAdvice) return `${words}.`;
  const rate = rateOfLoss({ weighIns, today: on, cutFrom: null, monthlyCycle: false, bodyMassOn });
  if (rate.kind === 'unknown') return `${words}.`;
  const direction = rate.percentAWeek >= 0 ? 'falling' : 'rising';
  return `${words}, ${direction} by ${Math.abs(rate.percentAWeek).toFixed(1)} % a week (± ${rate.standardError.toFixed(1)}).`;
}

/** Gives the notes of a session, by its id. */
export function sessionNotes({
  closed,
}: Pick<History, 'closed'>): (session: string) => readonly string[] {
  let notes: ReadonlyMap<string, readonly string[]> | null = null;
  return (session) => {
    notes ??= new Map(
      closed().map((state) => [
        state.session,
        [...state.notes, ...state.exercises.flatMap((exercise) => exercise.notes)],
      ]),
    );
    return notes.get(session) ?? [];
  };
}
