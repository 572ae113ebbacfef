import { Temporal } from 'temporal-polyfill';
import type { Past } from '../progression/past.ts';
import { MUSCLES, type Muscle } from '../training/lift.ts';
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
  /** Muscles trained in these weeks. */
  readonly muscles: readonly Muscle[];
  /** Trend of body weight today, and at the start of the cut; null where it is not known or not to be shown. */
  readonly body: { readonly now: Mass; readonly atStart: Mass | null } | null;
  readonly today: Temporal.PlainDate;
}

/** Nothing was planned, and nothing missed, before the first session. */
function sinceFirst(weeks: readonly WorkDone[], { sessions }: Past): readonly WorkDone[] {
  const first = sessions.find(({ setsDone }) => setsDone > 0)?.date;
  if (!first) return weeks.slice(-1);
  return weeks.filter(({ to }) => Temporal.PlainDate.compare(to, first) >= 0);
}

/** Reviews the last `weeks` calendar weeks and says what to do next. */
export function review(question: ReviewQuestion, weeks: number): Review {
  const evidence = evidenceOf(question);
  const { program, today, past, weightAdvice } = question;
  const work = sinceFirst(weeksOfWork(past, today, weeks, program.daysPerWeek), past);
  const now = weightAdvice ? past.bodyMassOn(today) : null;
  const { cutFrom } = evidence;
  return {
    evidence,
    verdict: verdict(evidence),
    weeks: work,
    muscles: musclesOf(work),
    body:
      now === null ? null : { now, atStart: cutFrom ? startMass(cutFrom, past.bodyMassOn) : null },
    today,
  };
}

function musclesOf(weeks: readonly WorkDone[]): Muscle[] {
  const trained = new Set(weeks.flatMap(({ hardSets }) => [...hardSets.keys()]));
  return MUSCLES.filter((muscle) => trained.has(muscle));
}
