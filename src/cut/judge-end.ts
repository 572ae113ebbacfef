import { Temporal } from 'temporal-polyfill';
import { closingOf } from './closing.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import { daysBetween, startMass } from './cut-start.ts';
import type { Evidence } from './evidence.ts';
import { finding, type ReviewFinding } from './finding.ts';
import { isTooFar } from './plan.ts';

/** The weight or the day aimed for is there: what the cut came to, and the question whether it ends. */
export function judgeEnd(evidence: Evidence): ReviewFinding[] {
  const { program, past, today, cutFrom, pause, kept } = evidence;
  const { mass, date } = program.goal;
  const body = past.bodyMassOn(today);
  const byMass = mass !== null && body !== null && body <= mass && !isAboveStart(evidence);
  const byDate = date !== null && daysBetween(Temporal.PlainDate.from(date), today) >= 0;
  const closing = cutFrom && !pause && (byMass || byDate) ? closingOf(evidence) : null;
  if (!closing) return [];
  return [
    finding(
      reviewReason('goal-reached', {
        mass: byMass ? mass : null,
        date: byMass ? null : date,
        kept: kept?.share ?? null,
        lost: closing.body && closing.body.then - closing.body.now,
        weeks: closing.weeks,
        done: closing.sessions,
        planned: closing.planned,
      }),
    ),
  ];
}

/** A weight that the cut began under is none to be reached by losing. */
function isAboveStart({ program, past, cutFrom }: Evidence): boolean {
  const { mass } = program.goal;
  const start = cutFrom && startMass(cutFrom, past.bodyMassOn);
  return mass !== null && start !== null && start <= mass;
}

/**
 * Weight and day aimed for do not fit together at any rate of the band, or the weight is too far away,
 * or above where the cut began.
 */
export function judgeTooSoon(evidence: Evidence): ReviewFinding[] {
  const { plan, program, past, today, cutFrom } = evidence;
  const { mass } = program.goal;
  if (isAboveStart(evidence)) {
    const toCome = cutFrom && daysBetween(today, cutFrom) > 0 ? { toCome: true } : {};
    return [finding(reviewReason('goal-above-start', { mass, ...toCome }))];
  }
  const now = past.bodyMassOn(today);
  if (cutFrom && mass !== null && now !== null && isTooFar(mass, now)) {
    const facts = { mass, now, share: 1 - CUT_LIMITS.farthestGoal };
    return [finding(reviewReason('goal-too-far', facts))];
  }
  if (!plan || plan.tooFast === null || !plan.reached) return [];
  const facts = {
    mass: program.goal.mass,
    date: program.goal.date,
    needed: plan.tooFast,
    high: program.rate[1],
    early: plan.reached.early.toString(),
  };
  return [finding(reviewReason('goal-too-soon', facts))];
}
