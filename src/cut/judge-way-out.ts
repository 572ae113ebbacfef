import type { Temporal } from 'temporal-polyfill';
import { isEnd, type Pause } from './aim-in-force.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { type CutRule, reviewReason } from './cut-rules.ts';
import { cutStart, daysBetween } from './cut-start.ts';
import type { Evidence } from './evidence.ts';
import { changeBy, finding, type ReviewFinding } from './finding.ts';

const SET_BACK: CutRule = 'set-comes-back-to-file';
const DAY_BACK: CutRule = 'day-comes-back-to-file';

/** The end of the cut that the lifter said yes to, as long as it stands; else null. */
export const endOf = ({ pause }: Pick<Evidence, 'pause'>): Pause | null =>
  pause && isEnd(pause) ? pause : null;

/**
 * Once a cut is over, what it took comes back, one step a week: first the sets that its review took
 * out of the program, then the days of training, up to those asked for before. When all is back, or
 * was turned down, the next program is due.
 */
export function judgeWayOut(evidence: Evidence): ReviewFinding[] {
  const end = endOf(evidence);
  if (!end || isStepLately(evidence)) return [];
  const step = setBack(evidence) ?? dayBack(evidence, end);
  return [step ?? finding(reviewReason('next-program'))];
}

function isStepLately({ past, today }: Evidence): boolean {
  return past.decisions.some(
    ({ rule, answer, date }) =>
      (rule === SET_BACK || rule === DAY_BACK) &&
      answer === 'yes' &&
      daysBetween(date, today) < CUT_LIMITS.moreEveryDays,
  );
}

function setBack({ past, exercises }: Evidence): ReviewFinding | null {
  // A no stands: that set is not asked about again.
  const answers = (rule: CutRule, track: string, said: readonly string[]) =>
    past.decisions.filter(
      (each) => each.rule === rule && each.subject === track && said.includes(each.answer),
    ).length;
  const owed = exercises.find(
    ({ track }) =>
      answers('do-less-in-file', track, ['yes']) > answers(SET_BACK, track, ['yes', 'no']),
  );
  if (!owed) return null;
  const { track, exercise } = owed;
  const changes = exercises.filter((each) => each.track === track).map((each) => changeBy(each, 1));
  const { key: lift, name } = exercise.lift;
  const facts = { lift, name, from: changes[0]?.from ?? 0, to: changes[0]?.to ?? 0 };
  return finding(reviewReason(SET_BACK, facts), track, changes);
}

function dayBack({ past, program }: Evidence, { from: end }: Pause): ReviewFinding | null {
  const refused = past.decisions.some(
    ({ rule, answer, date }) => rule === DAY_BACK && answer === 'no' && daysBetween(end, date) >= 0,
  );
  const from = program.daysPerWeek;
  const before = Math.min(CUT_LIMITS.mostDays, daysBefore(past.sessions, program, end));
  if (refused || from >= before) return null;
  const to = from + 1;
  return finding(reviewReason(DAY_BACK, { from, to, before }), null, [
    { key: 'days_per_week', from, to },
  ]);
}

/** The most days a week that a program asked for in the cut and in the four weeks before it. */
function daysBefore(
  sessions: Evidence['past']['sessions'],
  program: Evidence['program'],
  end: Temporal.PlainDate,
): number {
  const start = cutStart({ ...program, aim: 'cut' }, sessions, end)?.subtract({
    days: CUT_LIMITS.daysBefore,
  });
  if (!start) return 0;
  return sessions.reduce(
    (most, { date, daysPerWeek = 0, setsDone }) =>
      setsDone > 0 && daysBetween(start, date) >= 0 && daysBetween(date, end) >= 0
        ? Math.max(most, daysPerWeek)
        : most,
    0,
  );
}
