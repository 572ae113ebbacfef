import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import type { Evidence } from './evidence.ts';
import { answerTo, finding, type ReviewFinding } from './finding.ts';
import { judgeData, judgeNotBegun, judgeRateAnew } from './judge-data.ts';
import { judgeEnd, judgeTooSoon } from './judge-end.ts';
import { judgeLighterInForce, judgePaused } from './judge-in-force.ts';
import { judgeLess, judgeLighterWeek } from './judge-less.ts';
import { judgeMore, judgeNotDone, judgeOver } from './judge-more.ts';
import { judgeWayOut } from './judge-way-out.ts';
import {
  judgeFarTooFast,
  judgeNoCut,
  judgePause,
  judgeRateSoFar,
  judgeSlow,
  judgeTooFast,
} from './judge-weight.ts';

/** What to do, or not, next week. */
export interface Verdict {
  readonly headline: ReviewFinding;
  /** What else holds, in order of weight; facts last. */
  readonly below: readonly ReviewFinding[];
}

interface Row {
  readonly judge: (evidence: Evidence) => readonly ReviewFinding[];
  /**
   * What becomes of it when the lifter said no: it is gone for a while, or stands below as a fact, or
   * stays where it is and asks no more.
   */
  readonly refused?: 'gone' | 'below' | 'stays';
  /** Is it only worth a word where nothing before it was found? */
  readonly alone?: boolean;
}

/** In this order: the first that finds something is the headline. Strength that goes comes before missing data. */
const TABLE: readonly Row[] = [
  { judge: judgeWayOut, refused: 'gone' },
  { judge: judgePaused },
  { judge: judgeEnd, refused: 'gone' },
  { judge: judgeFarTooFast, refused: 'stays' },
  { judge: judgeTooFast, refused: 'below' },
  { judge: judgePause, refused: 'gone' },
  // Progression itself stays quiet about a lighter week that was turned down.
  { judge: judgeLighterWeek },
  { judge: judgeLess, refused: 'gone' },
  { judge: judgeData },
  { judge: judgeHardlyTrained },
  { judge: judgeNoCut, refused: 'below' },
  { judge: judgeLighterInForce },
  { judge: judgeRateSoFar },
  { judge: judgeMore, refused: 'gone', alone: true },
  { judge: judgeSlow, alone: true },
];

const FACTS: readonly Row['judge'][] = [
  judgeTooSoon,
  judgeNotBegun,
  judgeRateAnew,
  judgeNotDone,
  judgeOver,
  judgeSessions,
];

/** The verdict of the week: the first rule that holds is the headline, what else holds stands below. */
export function verdict(evidence: Evidence): Verdict {
  const { past, today } = evidence;
  const advice: ReviewFinding[] = [];
  const answered: ReviewFinding[] = [];
  for (const { judge, refused, alone } of TABLE) {
    if (alone && advice.length + answered.length > 0) continue;
    for (const found of judge(evidence)) {
      const answer = refused ? answerTo(found, past.decisions, today) : null;
      const said = answer ? { ...found, answered: answer } : found;
      if (!answer || refused === 'stays') advice.push(said);
      // What was said yes to, and changes no file, is known: it goes on as a fact.
      else if (answer === 'yes' && found.changes.length === 0) answered.push(said);
      else if (answer === 'yes') advice.push(found);
      else if (refused === 'below') answered.push(said);
    }
  }
  const [headline = stay(evidence, answered.length > 0), ...others] = advice;
  const facts = FACTS.flatMap((judge) => judge(evidence));
  return {
    headline,
    below: [...others, ...answered, ...facts],
  };
}

/** Where something stands that was answered, or lifts slip, or strength is surely lost, nothing says that all is well. */
function stay(evidence: Evidence, answered: boolean): ReviewFinding {
  const { kept, rate, exercises, together } = evidence;
  const slipping = new Set(exercises.flatMap(({ slip, track }) => (slip === null ? [] : [track])));
  return finding(
    reviewReason('stay-the-course', {
      kept: kept?.share ?? null,
      rate: rate?.now.kind === 'known' ? rate.now.percentAWeek : null,
      ...sessionsOf(evidence),
      ...(answered ? { answered } : {}),
      ...(slipping.size > 0 || together ? { slipping: slipping.size } : {}),
      ...(kept !== null && kept.high < 1 ? { lost: true } : {}),
    }),
  );
}

/** Little can be said of a plan that is hardly trained. */
function judgeHardlyTrained(evidence: Evidence): ReviewFinding[] {
  const { done, planned } = sessionsOf(evidence);
  return evidence.work.fullOn === null && done <= planned * CUT_LIMITS.hardlyTrained
    ? [finding(reviewReason('hardly-trained', { done, planned }))]
    : [];
}

function judgeSessions(evidence: Evidence): ReviewFinding[] {
  const { done, planned } = sessionsOf(evidence);
  return evidence.work.fullOn === null &&
    done < planned &&
    judgeHardlyTrained(evidence).length === 0
    ? [finding(reviewReason('sessions-missed', { done, planned }))]
    : [];
}

const sessionsOf = ({ work }: Evidence) => ({ done: work.sessions, planned: work.planned });
