import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import type { Evidence } from './evidence.ts';
import { finding, isTurnedDown, type ReviewFinding } from './finding.ts';
import { judgeData } from './judge-data.ts';
import { judgeLess, judgeLighterWeek } from './judge-less.ts';
import { judgeMore, judgeOver } from './judge-more.ts';
import { judgeFarTooFast, judgePause, judgeSlow, judgeTooFast } from './judge-weight.ts';

/** What to do, or not, next week. */
export interface Verdict {
  readonly headline: ReviewFinding;
  /** What else holds, in order of weight; facts last. */
  readonly below: readonly ReviewFinding[];
}

interface Row {
  readonly judge: (evidence: Evidence) => readonly ReviewFinding[];
  /** Can the lifter turn it down for a while? */
  readonly advice: boolean;
}

/** In this order: the first that finds something is the headline. */
const TABLE: readonly Row[] = [
  { judge: judgeFarTooFast, advice: false },
  { judge: judgeData, advice: false },
  { judge: judgeTooFast, advice: false },
  { judge: judgePause, advice: true },
  // Progression itself stays quiet about a lighter week that was turned down.
  { judge: judgeLighterWeek, advice: false },
  { judge: judgeLess, advice: true },
  { judge: judgeMore, advice: true },
];

const FACTS: readonly Row['judge'][] = [judgeSlow, judgeOver, judgeSessions];

/** The verdict of the week: the first rule that holds is the headline, what else holds stands below. */
export function verdict(evidence: Evidence): Verdict {
  const { past, today } = evidence;
  const advice = TABLE.flatMap(({ judge, advice: mayRefuse }) =>
    judge(evidence).filter((found) => !mayRefuse || !isTurnedDown(found, past.decisions, today)),
  );
  const [headline = stay(evidence), ...others] = advice;
  return { headline, below: [...others, ...FACTS.flatMap((judge) => judge(evidence))] };
}

function stay(evidence: Evidence): ReviewFinding {
  const { kept, rate } = evidence;
  return finding(
    reviewReason('stay-the-course', {
      kept: kept?.share ?? null,
      rate: rate?.now.kind === 'known' ? rate.now.percentAWeek : null,
      ...sessionsOf(evidence),
    }),
  );
}

function judgeSessions(evidence: Evidence): ReviewFinding[] {
  const { done, planned } = sessionsOf(evidence);
  const full = evidence.daysTrained >= CUT_LIMITS.workDays;
  return full && done < planned
    ? [finding(reviewReason('sessions-missed', { done, planned }))]
    : [];
}

const sessionsOf = ({ work }: Evidence) => ({ done: work.sessions, planned: work.planned });
