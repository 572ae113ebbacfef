import type { Temporal } from 'temporal-polyfill';
import { reviewReason } from '../cut/cut-rules.ts';
import { answersTo, finding, type ReviewFinding } from '../cut/finding.ts';
import { judgeTooSoon } from '../cut/judge-end.ts';
import type { ReadingDoubt } from '../cut/reading-doubt.ts';
import { weekdaysSaid } from '../cut/relaid-week.ts';
import { type Review, review } from '../cut/review.ts';
import { waistDoubt } from '../cut/waist-doubt.ts';
import { weighInDoubt } from '../cut/weigh-in-doubt.ts';
import type { History, WeighIn } from '../journal/history.ts';
import type { Program } from '../program/program.ts';
import { type Hurt, hurtsOn } from '../progression/hurts.ts';
import { type StrengthOn, strengthOver } from '../progression/lift-strength.ts';
import { LIGHTER_WEEK, mayTakeLighterWeek } from '../progression/lighter-week.ts';
import { because } from '../progression/rules/progression-rules.ts';
import {
  type LiftSession,
  type LiftSummary,
  liftRows,
  liftSummaries,
  searchHistory,
} from '../report/lift-rows.ts';
import { goalFigures } from '../report/review-figures.ts';
import { findingWords } from '../report/review-text.ts';
import type { Settings } from '../settings/settings.ts';
import { dayWords } from '../text/day-words.ts';
import { once } from '../text/once.ts';
import { orProblem, type Problem } from '../text/problem.ts';
import { type Length, lengthText, tapeOf } from '../training/length.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import { pastChanger, type RecordChange } from './change-past.ts';
import { type ProgramEdit, programEdit } from './change-program.ts';
import { rateAsked, trendWords } from './keep-weigh-in.ts';
import { kitsOf } from './kits.ts';
import type { Lifter } from './open-lifter.ts';
import type { SettingsKeeper } from './ports.ts';
import { reasonWords } from './rules.ts';

/** Calendar weeks that the review on the screen looks back on. */
const WEEKS = 4;

/** The past as the screens ask for it. */
export function openLookBack(lifter: Lifter, settings: SettingsKeeper, unit: () => Unit): LookBack {
  const history = () => lifter.journal().history();
  const changePast = pastChanger(lifter, settings, unit);
  const pastSessions = (rows: readonly LiftSession[]): PastSession[] => {
    const sessions = new Map(history().sessions.map((done) => [done.session, done]));
    return rows.map((row) => {
      const { session } = row.result;
      const done = sessions.get(session);
      return { session, row, unit: done?.unit ?? unit(), notes: done?.notes ?? [] };
    });
  };
  const found = (query: string) => searchHistory(history().results, query, sessionNotes(history()));

  return {
    unit,
    weightAdvice: () => settings.now().weightAdvice,
    review: () => {
      const review = reviewOf(lifter, WEEKS, settings.now());
      const program = lifter.program();
      const { headline, below } = review.verdict;
      const advice = [headline, ...below].map((finding): Advice => {
        const { text, source } = findingWords(finding, (reason) =>
          reasonWords(reason, program.unit),
        );
        const { yes, no } = answersTo(finding);
        return { finding, text, source, mayTake: yes, mayRefuse: no };
      });
      return { review, unit: program.unit, advice, wishes: wishesFor(review) };
    },
    leadsTo: (program) => {
      const found = reviewOf(lifter, WEEKS, settings.now(), program);
      const { plan } = found.evidence;
      const goals = plan ? goalFigures(plan, program.unit) : [];
      const doubts = judgeTooSoon(found.evidence).map(
        ({ reason }) => reasonWords(reason, program.unit).text,
      );
      return [...goals.map(({ name, value, about }) => `${name}: ${value}, ${about}.`), ...doubts];
    },
    programEdit: ({ changes }) => orProblem(() => programEdit(lifter, changes)),
    kits: () => kitsOf(history(), unit()).map(({ name }) => name),
    week: () => {
      const today = lifter.today();
      return { from: today.dayOfWeek, days: weekdaysSaid(history().decisions, today) };
    },
    hurts: () => hurtsOn(history().decisions, lifter.today()),
    readings: () => history().weighIns.toReversed(),
    weighing: (instead) => {
      const date = instead?.date ?? lifter.today();
      const before = history().weighIns.at(-1);
      const waist = history().waists.at(-1);
      const words = [
        before ? `Last: ${massText(before.mass, unit())} on ${dayWords(before.date)}.` : null,
        trendWords(history(), date, unit(), rateAsked(lifter, date, settings.now())),
      ];
      return {
        date,
        instead,
        unit: unit(),
        last: before?.id ?? null,
        words: words.filter((each) => each !== null),
        lastWaist: waist?.id ?? null,
        waist: waist
          ? [`Last: ${lengthText(waist.length, tapeOf(unit()))} on ${dayWords(waist.date)}.`]
          : [],
      };
    },
    doubt: (mass) => weighInDoubt(mass, lifter.today(), history().weighIns, unit()),
    doubtWaist: (length) => waistDoubt(length, lifter.today(), history().waists, tapeOf(unit())),
    lifts: (query) => liftSummaries(liftRows(found(query), null, history().bodyMassOn)),
    results: (lift, query) =>
      pastSessions(liftRows(found(query), lift, history().bodyMassOn)).toReversed(),
    strength: (lift) => strengthOver(history(), lift),
    session: (session) =>
      pastSessions(
        liftRows(
          history().results.filter((result) => result.session === session),
          null,
          history().bodyMassOn,
        ),
      ),
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
  readonly wishes: Readonly<Record<'lighterWeek' | 'pause' | 'end', Wish>>;
}

/** What the lifter may ask for unasked; a sentence where it is not to be had now. */
export type Wish = { readonly finding: ReviewFinding } | { readonly why: string };

function wishesFor({ evidence, today }: Review): ReviewPage['wishes'] {
  const { past, pause, cutFrom } = evidence;
  return {
    lighterWeek: mayTakeLighterWeek(past, today)
      ? { finding: finding(because(LIGHTER_WEEK)) }
      : { why: 'There is one lighter week in four, and the last is not that long ago.' },
    pause:
      cutFrom === null || pause
        ? { why: pause ? 'The cut rests already.' : 'There is no cut to pause.' }
        : { finding: finding(reviewReason('pause-wanted')) },
    end:
      cutFrom === null || pause?.until === null
        ? { why: pause ? 'The cut rests already.' : 'There is no cut to end.' }
        : { finding: finding(reviewReason('cut-ended')) },
  };
}

/** What the lifter sees before stepping on the scales. */
export interface Weighing {
  readonly date: Temporal.PlainDate;
  /** The reading that is corrected; null for one of today. */
  readonly instead: WeighIn | null;
  readonly unit: Unit;
  /** The reading before, and what the trend makes of all of them; none before the first. */
  readonly words: readonly string[];
  /** The id of that reading. */
  readonly last: string | null;
  /** The waist reading before; none before the first. */
  readonly waist: readonly string[];
  readonly lastWaist: string | null;
}

/** One session of a lift, with its sets as they can be corrected. */
export interface PastSession {
  readonly session: string;
  readonly row: LiftSession;
  readonly unit: Unit;
  readonly notes: readonly string[];
}

/** What a change came to, in a sentence for the lifter. */
export interface Changed {
  readonly said: string;
}

/** What the screens ask of the past. Everything answers at once; only `change` changes anything. */
export interface LookBack {
  /** Unit of the program in use. */
  readonly unit: () => Unit;
  /** The weekly review. @throws Refusal when the program cannot be read. */
  readonly review: () => ReviewPage;
  readonly weightAdvice: () => Settings['weightAdvice'];
  /** Where a cut with the goals of this program would lead, a sentence each; none without a goal ahead. */
  readonly leadsTo: (program: Program) => readonly string[];
  /** What a yes would change in the program file; nothing is written yet. */
  readonly programEdit: (finding: ReviewFinding) => ProgramEdit | Problem;
  readonly weighing: (instead: WeighIn | null) => Weighing;
  /** Names of the kits that a day can be trained with. */
  readonly kits: () => readonly string[];
  /** Today's weekday, Monday 1, and the days of this week that there are; null: as the program says. */
  readonly week: () => { readonly from: number; readonly days: readonly number[] | null };
  /** Joints that hurt now. */
  readonly hurts: () => readonly Hurt[];
  /** The newest first. */
  readonly readings: () => readonly WeighIn[];
  readonly doubt: (mass: Mass) => ReadingDoubt<Mass> | null;
  /** The same of a waist reading. */
  readonly doubtWaist: (length: Length) => ReadingDoubt<Length> | null;
  /** Lifts with results that every word of `query` fits, the one done last first. */
  readonly lifts: (query: string) => readonly LiftSummary[];
  /** Sessions of a lift that every word of `query` fits, newest first. */
  readonly results: (lift: string, query: string) => readonly PastSession[];
  /** What the results say of a lift over time. */
  readonly strength: (lift: string) => readonly StrengthOn[];
  /** Every lift of one session, in its order. */
  readonly session: (session: string) => readonly PastSession[];
  readonly change: (change: RecordChange) => Changed | Problem;
}

/** The review of the last `weeks` calendar weeks; weight is spoken of only to who asked for it. */
export function reviewOf(
  lifter: Lifter,
  weeks: number,
  { weightAdvice } = lifter.settings().settings,
  program = lifter.program(),
): Review {
  const history = lifter.journal().history();
  return review(
    {
      program,
      past: history,
      weighIns: history.weighIns,
      waists: history.waists,
      today: lifter.today(),
      weightAdvice: weightAdvice === 'yes',
    },
    weeks,
  );
}

/** Gives the notes of a session, by its id. */
export function sessionNotes({
  sessions,
}: Pick<History, 'sessions'>): (session: string) => readonly string[] {
  const noted = once(
    () => new Map(sessions.flatMap(({ session, notes }) => (notes ? [[session, notes]] : []))),
  );
  return (session) => noted().get(session) ?? [];
}
