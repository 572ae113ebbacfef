import { Temporal } from 'temporal-polyfill';
import { pausesSaid } from './aim-in-force.ts';
import { closingOf } from './closing.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Evidence } from './evidence.ts';
import { changeBy, finding, type ReviewFinding } from './finding.ts';
import { isTooFar } from './plan.ts';

/** The weight or the day aimed for is there: what the cut came to, and the question whether it ends. */
export function judgeEnd(evidence: Evidence): ReviewFinding[] {
  const { program, past, today, cutFrom, pause, kept } = evidence;
  const { mass, date } = program.goal;
  const body = past.bodyMassOn(today);
  const byMass = mass !== null && body !== null && body <= mass;
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

/** Weight and day aimed for do not fit together at any rate of the band, or the weight is too far away. */
export function judgeTooSoon({ plan, program, past, today, cutFrom }: Evidence): ReviewFinding[] {
  const { mass } = program.goal;
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

/**
 * Once a cut is over, the sets that it took out of the program come back, one a week; when all are
 * back, the next program is due.
 */
export function judgeWayOut(evidence: Evidence): ReviewFinding[] {
  const { past, pause, exercises, today } = evidence;
  const rest = pausesSaid(past.decisions).at(-1);
  if (pause?.until !== null || pause === null || rest?.why !== 'goal-reached') return [];
  const yes = past.decisions.filter(({ answer }) => answer === 'yes');
  const lately = yes.some(
    ({ rule, date }) =>
      rule === 'set-comes-back-to-file' && daysBetween(date, today) < CUT_LIMITS.moreEveryDays,
  );
  if (lately) return [];
  const count = (rule: string, track: string) =>
    yes.filter((each) => each.rule === rule && each.subject === track).length;
  for (const { track } of exercises) {
    if (count('do-less-in-file', track) <= count('set-comes-back-to-file', track)) continue;
    const changes = exercises
      .filter((each) => each.track === track)
      .map((each) => changeBy(each, 1));
    const [first] = changes;
    const name = exercises.find((each) => each.track === track)?.exercise.lift.name ?? '';
    if (!first) continue;
    const facts = { lift: first.lift, name, from: first.from, to: first.to };
    return [finding(reviewReason('set-comes-back-to-file', facts), track, changes)];
  }
  return [finding(reviewReason('next-program'))];
}
