import { maySpareSet, tracksWithDrop } from '../progression/weekly-sets.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { type CutRule, reviewReason } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Evidence } from './evidence.ts';
import { finding, type ReviewFinding } from './finding.ts';

/** Losing faster than 1.5 % a week: before everything else. */
export const judgeFarTooFast = (evidence: Evidence): ReviewFinding[] =>
  rateFinding(evidence, 'far-above', 'lose-far-too-fast');

export const judgeTooFast = (evidence: Evidence): ReviewFinding[] =>
  rateFinding(evidence, 'above', 'lose-slower');

/** A fact, not advice: the plan is the lifter's. */
export const judgeSlow = (evidence: Evidence): ReviewFinding[] =>
  rateFinding(evidence, 'below', 'slower-than-planned');

function rateFinding({ rate, program }: Evidence, lies: string, rule: CutRule): ReviewFinding[] {
  if (rate?.lies !== lies || rate.now.kind !== 'known') return [];
  const [low, high] = program.rate;
  const { percentAWeek, standardError } = rate.now;
  return [finding(reviewReason(rule, { rate: percentAWeek, error: standardError, low, high }))];
}

/** A pause is due when strength goes and no set is left to drop, or after sixteen weeks. */
export function judgePause(evidence: Evidence): ReviewFinding[] {
  const { rate, kept, cutFrom, today } = evidence;
  if (!rate || !cutFrom) return [];
  const pause = pauseOf(evidence);
  if (pause !== null && daysBetween(pause, today) < CUT_LIMITS.presentDays) return [];
  if (kept !== null && kept.share < CUT_LIMITS.pauseUnderKept && isAtFloor(evidence)) {
    return [finding(reviewReason('pause-cut', { kept: kept.share }))];
  }
  const since = pause ? pause.add({ days: CUT_LIMITS.pauseDays }) : cutFrom;
  const days = daysBetween(since, today);
  if (days < CUT_LIMITS.pauseAfterDays) return [];
  return [finding(reviewReason('pause-cut-long', { weeks: Math.floor(days / 7) }))];
}

/** The day of the last pause in this cut that the lifter said yes to. */
function pauseOf({ past, cutFrom }: Evidence) {
  const yes = past.decisions.findLast(
    ({ rule, answer, date }) =>
      (rule === 'pause-cut' || rule === 'pause-cut-long') &&
      answer === 'yes' &&
      cutFrom !== null &&
      daysBetween(cutFrom, date) >= 0,
  );
  return yes?.date ?? null;
}

/** Can none of the slipping compound lifts (where none slips: of all) spare a set? */
function isAtFloor({ exercises, program, past }: Evidence): boolean {
  const compounds = exercises.filter(({ exercise }) => exercise.lift.kind === 'compound');
  const slipping = compounds.filter(({ slip }) => slip !== null);
  const dropped = tracksWithDrop(program, past);
  const looked = slipping.length > 0 ? slipping : compounds;
  return looked.every(
    ({ exercise, track }) => dropped.has(track) || !maySpareSet(program, exercise, dropped),
  );
}
