import type { Temporal } from 'temporal-polyfill';
import { maySpareSet, tracksWithDrop } from '../progression/weekly-sets.ts';
import { pausesSaid } from './aim-in-force.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { type CutRule, reviewReason } from './cut-rules.ts';
import { daysBetween, startMass } from './cut-start.ts';
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

/** Before a rate is judged it may be seen to be another than planned: then nobody is told to go on so. */
export function judgeRateSoFar(evidence: Evidence): ReviewFinding[] {
  const { rate, program } = evidence;
  if (rate?.now.kind !== 'known') return [];
  const [low, high] = program.rate;
  const { percentAWeek, standardError } = rate.now;
  const isPlanned = percentAWeek - standardError <= high && percentAWeek + standardError >= low;
  return isPlanned ? [] : rateFinding(evidence, 'not-yet', 'rate-so-far');
}

/** A cut in which weight rises or stands still is asked about: it may be no cut that is meant. */
export function judgeNoCut(evidence: Evidence): ReviewFinding[] {
  const [found] = [
    ...rateFinding(evidence, 'gaining', 'not-a-cut'),
    ...rateFinding(evidence, 'standing', 'weight-stands-still'),
  ];
  const { cutFrom, past, today } = evidence;
  if (!found || !cutFrom) return [];
  const [then, now] = [startMass(cutFrom, past.bodyMassOn), past.bodyMassOn(today)];
  const weeks = Math.floor(daysBetween(cutFrom, today) / 7);
  const gained = then !== null && now !== null ? now - then : null;
  return [finding({ ...found.reason, facts: { ...found.reason.facts, weeks, gained } })];
}

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

/** The first day of the last pause in this cut: one that the lifter said yes to, or took without. */
function pauseOf(evidence: Evidence): Temporal.PlainDate | null {
  const [said, taken] = [pauseSaid(evidence), pauseTaken(evidence)];
  if (!said || !taken) return said ?? taken;
  return daysBetween(said, taken) > 0 ? taken : said;
}

/** Two weeks and more of training under `aim: maintain` are a pause, whoever thought of it. */
function pauseTaken({ past, cutFrom, today }: Evidence): Temporal.PlainDate | null {
  let pause: Temporal.PlainDate | null = null;
  let from: Temporal.PlainDate | null = null;
  const endsAt = (date: Temporal.PlainDate) => {
    if (from && daysBetween(from, date) >= CUT_LIMITS.pauseDays) {
      pause = date.subtract({ days: CUT_LIMITS.pauseDays });
    }
    from = null;
  };
  for (const { aim, date, setsDone } of past.sessions) {
    if (setsDone === 0 || aim === undefined || !cutFrom || daysBetween(cutFrom, date) < 0) continue;
    if (aim === 'maintain') from ??= date;
    else endsAt(date);
  }
  endsAt(today);
  return pause;
}

function pauseSaid({ past, cutFrom }: Evidence): Temporal.PlainDate | null {
  const said = pausesSaid(past.decisions).findLast(
    ({ from }) => cutFrom !== null && daysBetween(cutFrom, from) >= 0,
  );
  return said?.from ?? null;
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
