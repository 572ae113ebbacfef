import { LIMITS } from '../progression/limits.ts';
import { because } from '../progression/rules/progression-rules.ts';
import type { Reason } from '../training/rule.ts';
import { isEnd, type Pause } from './aim-in-force.ts';
import { reviewReason } from './cut-rules.ts';
import type { Evidence } from './evidence.ts';
import { finding, type ReviewFinding } from './finding.ts';

/** A pause says that it is one, and how long it lasts. */
export const aboutPause = (pause: Pause): Reason => {
  const { from, until } = pause;
  return until === null
    ? reviewReason('cut-at-rest', { since: from.toString(), ended: isEnd(pause) })
    : reviewReason('pause-in-force', { until: until.toString() });
};

export const judgePaused = ({ pause }: Evidence): ReviewFinding[] =>
  pause ? [finding(aboutPause(pause))] : [];

/** What the lifter said yes to is told as long as it lasts. */
export function judgeLighterInForce({ lighterWeek }: Evidence): ReviewFinding[] {
  if (!lighterWeek) return [];
  const until = lighterWeek.add({ days: LIMITS.lighterWeekDays - 1 });
  return [finding(because('lighter-week', { until: until.toString() }))];
}
