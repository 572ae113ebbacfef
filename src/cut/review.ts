import { Temporal } from 'temporal-polyfill';
import type { Past } from '../progression/past.ts';
import type { Length } from '../training/length.ts';
import { directMuscles, MUSCLES, type Muscle } from '../training/lift.ts';
import type { Mass } from '../training/mass.ts';
import { startMass } from './cut-start.ts';
import { type Evidence, evidenceOf, type ReviewQuestion } from './evidence.ts';
import { type Verdict, verdict } from './verdict.ts';
import { type WorkDone, weeksOfWork } from './work-done.ts';

/** The weekly review, whole. */
export interface Review {
  readonly evidence: Evidence;
  readonly verdict: Verdict;
  /** Calendar weeks from that of the first session on, oldest first, the present one last. */
  readonly weeks: readonly WorkDone[];
  /** Muscles trained in these weeks, and those that the program trains directly; none before the first session. */
  readonly muscles: readonly Muscle[];
  /** Trend of body weight today, and at the start of the cut; null where it is not known or not to be shown. */
  readonly body: { readonly now: Mass; readonly atStart: Mass | null } | null;
  /** The last waist reading of the cut, or of half a year, and the first; null without one or where it is not to be shown. */
  readonly waist: { readonly now: Length; readonly before: DatedWaist | null } | null;
  readonly today: Temporal.PlainDate;
}

/** The waist on a day. */
export interface DatedWaist {
  readonly date: Temporal.PlainDate;
  readonly length: Length;
}

/** Without a cut there is no beginning: the waist is compared with that of half a year ago. Ours. */
const DAYS_WITHOUT_CUT = 182;

/** Nothing was planned, and nothing missed, before the first session, also in its own week. */
function sinceFirst(weeks: readonly WorkDone[], { sessions }: Past): readonly WorkDone[] {
  const first = sessions.find(({ setsDone }) => setsDone > 0)?.date;
  if (!first) return weeks.slice(-1);
  const isBefore = (a: Temporal.PlainDate, b: Temporal.PlainDate) =>
    Temporal.PlainDate.compare(a, b) < 0;
  return weeks
    .filter(({ to }) => !isBefore(to, first))
    .map((week, at, { length }) =>
      at < length - 1 && isBefore(week.from, first)
        ? { ...week, planned: Math.min(week.planned, week.sessions) }
        : week,
    );
}

/** Reviews the last `weeks` calendar weeks and says what to do next. */
export function review(
  question: ReviewQuestion & { readonly waists?: readonly DatedWaist[] },
  weeks: number,
): Review {
  const evidence = evidenceOf(question);
  const { program, today, past, weightAdvice } = question;
  const work = sinceFirst(weeksOfWork(past, today, weeks, program.daysPerWeek), past);
  const now = weightAdvice ? past.bodyMassOn(today) : null;
  const { cutFrom } = evidence;
  return {
    evidence,
    verdict: verdict(evidence),
    weeks: work,
    muscles: musclesOf(work, program),
    body:
      now === null ? null : { now, atStart: cutFrom ? startMass(cutFrom, past.bodyMassOn) : null },
    waist: weightAdvice ? waistOf(question.waists ?? [], cutFrom, today) : null,
    today,
  };
}

function waistOf(
  waists: readonly DatedWaist[],
  cutFrom: Temporal.PlainDate | null,
  today: Temporal.PlainDate,
): Review['waist'] {
  const from = cutFrom ?? today.subtract({ days: DAYS_WITHOUT_CUT });
  const shown = waists.filter(({ date }) => Temporal.PlainDate.compare(date, from) >= 0);
  const [first] = shown;
  const last = shown.at(-1);
  return last ? { now: last.length, before: first === last ? null : (first ?? null) } : null;
}

/** Those trained, and those that the program means to train: a muscle left out is seen at 0. */
function musclesOf(weeks: readonly WorkDone[], { days }: ReviewQuestion['program']): Muscle[] {
  const trained = new Set(weeks.flatMap(({ hardSets }) => [...hardSets.keys()]));
  if (trained.size === 0) return [];
  const planned = days.flatMap(({ exercises }) =>
    exercises.flatMap(({ lift }) => directMuscles(lift.trains)),
  );
  return MUSCLES.filter((muscle) => trained.has(muscle) || planned.includes(muscle));
}
