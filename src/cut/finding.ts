import type { Temporal } from 'temporal-polyfill';
import { setsOf } from '../program/program.ts';
import { LIGHTER_WEEK } from '../progression/lighter-week.ts';
import type { Decision } from '../progression/past.ts';
import type { Reason } from '../training/rule.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import type { CutRule } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Watched } from './evidence.ts';

/** A change of one number in the program file. */
export type ProgramChange = SetsChange | DaysChange;

export interface SetsChange {
  readonly day: string;
  /** Position of the exercise in its day, from 0. */
  readonly index: number;
  readonly lift: string;
  /** The key whose number changes: `sets`, or `most_sets` of a cluster. */
  readonly key: 'sets' | 'most_sets';
  readonly from: number;
  readonly to: number;
}

interface DaysChange {
  readonly key: 'days_per_week';
  readonly from: number;
  readonly to: number;
}

/** One thing that the review found. */
export interface ReviewFinding {
  readonly reason: Reason;
  /** Lift, track or muscle that a yes or no is about; null for the whole program. */
  readonly subject: string | null;
  /** What a yes does to the program file; empty where there is nothing to change. */
  readonly changes: readonly ProgramChange[];
  /** What the lifter said to it lately, where it stands as a fact since; absent where it is open. */
  readonly answered?: 'yes' | 'no';
}

export const finding = (
  reason: Reason,
  subject: string | null = null,
  changes: readonly ProgramChange[] = [],
): ReviewFinding => ({ reason, subject, changes });

/** The change of an exercise's sets by one up or down. */
export function changeBy({ exercise, day, index }: Watched, by: 1 | -1): SetsChange {
  const from = setsOf(exercise);
  return {
    day,
    index,
    lift: exercise.lift.key,
    key: exercise.style === 'cluster' ? 'most_sets' : 'sets',
    from,
    to: from + by,
  };
}

/** What the lifter last said to this within the last three weeks; null where nothing was said. */
export function answerTo(
  { reason, subject }: ReviewFinding,
  decisions: readonly Decision[],
  today: Temporal.PlainDate,
): ReviewFinding['answered'] | null {
  const said = decisions.findLast(
    (decision) =>
      isSameAdvice(decision, reason.rule, subject) &&
      daysBetween(decision.date, today) < CUT_LIMITS.quietDays,
  );
  return said?.answer === 'yes' || said?.answer === 'no' ? said.answer : null;
}

const MORE = 'may-do-more';

/** Who wants to do no more wants no more of any muscle, for whatever reason. */
const isSameAdvice = (decision: Decision, rule: string, subject: string | null): boolean =>
  rule.startsWith(MORE)
    ? decision.rule.startsWith(MORE)
    : decision.rule === rule && decision.subject === subject;

interface Answers {
  readonly yes: boolean;
  readonly no: boolean;
}

const BOTH: Answers = { yes: true, no: true };
const NONE: Answers = { yes: false, no: false };

/** Advice that asks for nothing in the program file. Facts and warnings take no answer. */
const WITHOUT_FILE: ReadonlyMap<string, Answers> = new Map<CutRule | typeof LIGHTER_WEEK, Answers>([
  ['pause-cut', BOTH],
  ['pause-cut-long', BOTH],
  ['lose-far-too-fast', BOTH],
  ['lose-slower', BOTH],
  ['not-a-cut', BOTH],
  ['weight-stands-still', BOTH],
  ['goal-reached', BOTH],
  ['do-less', BOTH],
  [LIGHTER_WEEK, BOTH],
  ['pause-in-force', { yes: false, no: true }],
  ['cut-at-rest', { yes: true, no: false }],
  ['next-program', BOTH],
]);

/** What the lifter can say to a finding. */
export function answersTo({ reason, changes, answered }: ReviewFinding): Answers {
  if (answered) return NONE;
  if (changes.length > 0) return BOTH;
  return WITHOUT_FILE.get(reason.rule) ?? NONE;
}
