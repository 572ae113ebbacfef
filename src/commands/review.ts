import type { ReviewFinding } from '../cut/finding.ts';
import type { LiftKept } from '../cut/kept.ts';
import type { CutPlan } from '../cut/plan.ts';
import type { Review } from '../cut/review.ts';
import { reviewOf } from '../lifter/look-back.ts';
import { openLifter } from '../lifter/open-lifter.ts';
import { type ReasonShown, reasonWords } from '../lifter/rules.ts';
import { reviewText } from '../report/review-text.ts';
import { jsonText } from '../text/json-text.ts';
import { WEIGHT_QUESTION } from '../training/cautions.ts';
import { inUnit, type Mass, type Unit } from '../training/mass.ts';
import type { Run } from './call.ts';
import { wholeNumber } from './operands.ts';
import type { ReviewJson } from './review-schema.ts';
import { tellProblems } from './tell-problems.ts';
import { textSize } from './text-size.ts';

type Words = (reason: ReviewFinding['reason']) => ReasonShown;

/** Prints the weekly review: work done, strength kept, rate of loss, and one verdict. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const weeks = wholeNumber(String(call.options.weeks ?? '4'), '--weeks', 1, 520);
  const found = reviewOf(lifter, weeks);
  const { unit } = lifter.program();
  const words: Words = (reason) => reasonWords(reason, unit);
  tellProblems(call, lifter);
  if (call.global.json) {
    call.print(jsonText(reviewJson(found, words, unit)));
    return 0;
  }
  call.print(
    reviewText(found, words, unit, {
      ...textSize(call.ports),
      sources: call.options.why === true,
    }).join('\n'),
  );
  if (lifter.settings().settings.weightAdvice === 'ask') call.tell(WEIGHT_QUESTION);
  return 0;
};

function reviewJson(review: Review, words: Words, unit: Unit): ReviewJson {
  const { evidence, verdict, weeks, body, today } = review;
  const rate = evidence.rate?.now;
  return {
    schema: 1,
    program: evidence.program.name,
    date: today.toString(),
    unit,
    cut_from: evidence.cutFrom?.toString() ?? null,
    verdict: findingJson(verdict.headline, words),
    below: verdict.below.map((finding) => findingJson(finding, words)),
    kept: evidence.kept?.share ?? null,
    kept_low: evidence.kept?.low ?? null,
    kept_high: evidence.kept?.high ?? null,
    lifts: evidence.lifts.map((lift) => liftJson(lift, unit)),
    body_mass: body && inUnit(body.now, unit),
    rate:
      rate?.kind === 'known'
        ? {
            percent_a_week: rate.percentAWeek,
            standard_error: rate.standardError,
            weigh_ins: rate.weighIns,
          }
        : null,
    goal: evidence.plan && goalJson(evidence.plan, unit),
    weeks: weeks.map((week) => ({
      from: week.from.toString(),
      to: week.to.toString(),
      sessions: week.sessions,
      planned: week.planned,
      hard_sets: Object.fromEntries(week.hardSets),
      days: Object.fromEntries(week.days),
      cluster_reps: week.clusterReps,
      mean_reserve: week.meanReserve,
      lighter: week.lighter,
    })),
  };
}

function goalJson({ reached, onDate }: CutPlan, unit: Unit): ReviewJson['goal'] {
  const mass = (value: number | undefined) =>
    value === undefined ? null : inUnit(Math.round(value) as Mass, unit);
  return {
    early: reached?.early.toString() ?? null,
    late: reached?.late?.toString() ?? null,
    mass_low: mass(onDate?.low),
    mass_high: mass(onDate?.high),
  };
}

function findingJson(
  { reason, changes, answered }: ReviewFinding,
  words: Words,
): ReviewJson['verdict'] {
  const { text, source } = words(reason);
  return {
    rule: reason.rule,
    text,
    source,
    facts: reason.facts,
    answered: answered ?? null,
    changes: changes.map((change) => ({
      day: 'day' in change ? change.day : null,
      lift: 'lift' in change ? change.lift : null,
      key: change.key,
      from: change.from,
      to: change.to,
    })),
  };
}

function liftJson(lift: LiftKept, unit: Unit): ReviewJson['lifts'][number] {
  const known = lift.state === 'known' ? lift : null;
  const estimate = (value: number | undefined) =>
    value === undefined ? null : inUnit(Math.round(value) as Mass, unit);
  return {
    lift: lift.lift,
    name: lift.name,
    state: lift.state,
    kept: known?.share ?? null,
    kept_low: known?.low ?? null,
    kept_high: known?.high ?? null,
    e1rm_then: estimate(known?.then),
    e1rm_now: estimate(known?.now),
  };
}
