import type { Facts } from '../training/rule.ts';
import { pauseBefore } from './aim-in-force.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Evidence } from './evidence.ts';
import { finding, type ReviewFinding } from './finding.ts';

/** Says what is missing before the week can be judged; nothing when all is there. */
export function judgeData(evidence: Evidence): ReviewFinding[] {
  const { lifts, daysTrained, work, keptFrom, weightAdvice, today } = evidence;
  if (daysTrained === 0) return [finding(reviewReason('not-enough-data', { noSession: true }))];
  const most = lifts.reduce((sessions, lift) => Math.max(sessions, lift.sessions), 0);
  const known = lifts.some(({ state }) => state === 'known');
  const isBegun = keptFrom !== null && daysBetween(keptFrom, today) >= 0;
  const blind = !known && lifts.some(({ state }) => state === 'weigh-in-missing');
  return missing({
    ...(isAfterPause(evidence) ? {} : rateFacts(evidence)),
    ...(work.fullOn ? { judgedFrom: work.fullOn.toString() } : {}),
    // One more than there are, so that none is told from not known.
    ...(isBegun && !known && !blind ? { sessionsOfALift: most + 1 } : {}),
    // Nobody is asked to step on the scales who should not watch their weight.
    ...(blind && weightAdvice ? { bodyMass: true } : {}),
  });
}

/**
 * A cut is wanted and no day known to count it from: trained under another aim so far, or in a table
 * alone; or the day that the program names is still to come.
 */
export function judgeNotBegun(evidence: Evidence): ReviewFinding[] {
  const { program, keptFrom, cutFrom, daysTrained, today } = evidence;
  if (cutFrom && daysBetween(today, cutFrom) > 0) {
    return [finding(reviewReason('cut-to-come', { date: cutFrom.toString() }))];
  }
  return program.aim === 'cut' && keptFrom === null && daysTrained > 0
    ? [finding(reviewReason('cut-not-begun'))]
    : [];
}

/** After a pause the rate is read anew: a fact, for all else is known. */
export const judgeRateAnew = (evidence: Evidence): ReviewFinding[] =>
  isAfterPause(evidence) ? missing(rateFacts(evidence)) : [];

const missing = (facts: Facts): ReviewFinding[] =>
  Object.keys(facts).length === 0 ? [] : [finding(reviewReason('not-enough-data', facts))];

function rateFacts({ rate }: Evidence): Facts {
  const now = rate?.now;
  if (now?.kind !== 'unknown') return {};
  return {
    ...(now.weighInsMissing > 0 ? { weighInsMissing: now.weighInsMissing } : {}),
    rateFrom: now.earliest.toString(),
  };
}

function isAfterPause({ past, today }: Evidence): boolean {
  const pause = pauseBefore(past.decisions, today);
  return pause !== null && daysBetween(pause.until, today) <= CUT_LIMITS.rateVerdictFromDay;
}
