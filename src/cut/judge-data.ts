import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import type { Evidence } from './evidence.ts';
import { finding, type ReviewFinding } from './finding.ts';

/** Says what is missing before the week can be judged; nothing when all is there. */
export function judgeData(evidence: Evidence): ReviewFinding[] {
  const { rate, lifts, daysTrained, today, cutFrom, weightAdvice } = evidence;
  if (daysTrained === 0) return [finding(reviewReason('not-enough-data', { noSession: true }))];
  const now = rate?.now;
  const most = lifts.reduce((sessions, lift) => Math.max(sessions, lift.sessions), 0);
  const known = lifts.some(({ state }) => state === 'known');
  const blind = !known && lifts.some(({ state }) => state === 'weigh-in-missing');
  const facts = {
    ...(now?.kind === 'unknown' && now.weighInsMissing > 0
      ? { weighInsMissing: now.weighInsMissing }
      : {}),
    ...(now?.kind === 'unknown' ? { rateFrom: now.earliest.toString() } : {}),
    ...(daysTrained < CUT_LIMITS.workDays
      ? { judgedFrom: today.add({ days: CUT_LIMITS.workDays - daysTrained }).toString() }
      : {}),
    // One more than there are, so that none is told from not known.
    ...(cutFrom && !known && !blind ? { sessionsOfALift: most + 1 } : {}),
    // Nobody is asked to step on the scales who should not watch their weight.
    ...(blind && weightAdvice ? { bodyMass: true } : {}),
  };
  return Object.keys(facts).length === 0 ? [] : [finding(reviewReason('not-enough-data', facts))];
}
