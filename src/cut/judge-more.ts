import { setsOf } from '../program/program.ts';
import { type Bout, boutsOf } from '../progression/bout.ts';
import { directMuscles, MUSCLES, type Muscle } from '../training/lift.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { type CutRule, reviewReason } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Evidence, Watched } from './evidence.ts';
import { changeBy, finding, type ReviewFinding } from './finding.ts';

/** More sets of one exercise than these make another exercise the better choice. Common practice. */
const MOST_SETS = 5;

const [LOW, HIGH] = CUT_LIMITS.weeklySets;

/**
 * One set more for one muscle, the one with the least work first: it had under six hard sets a
 * week and nothing that trains it slips; or nothing slips at all, weight does not fall faster than
 * 1 % a week, and no lift that trains it directly gained a rep or load in four weeks.
 */
export function judgeMore(evidence: Evidence): ReviewFinding[] {
  const { exercises, work, lighterWeek } = evidence;
  // Low volume from missed sessions is not mended by longer ones; a lighter week is not judged.
  if (lighterWeek || work.lighter || work.sessions < work.planned - 1 || isMoreLately(evidence))
    return [];
  const direct = new Set(exercises.flatMap(({ exercise }) => directMuscles(exercise.lift.trains)));
  const byWork = MUSCLES.filter((muscle) => direct.has(muscle)).sort(
    (a, b) => weekly(evidence, a) - weekly(evidence, b),
  );
  for (const muscle of byWork) {
    const trainers = exercises.filter(({ exercise }) => exercise.lift.trains[muscle] === 1);
    const rule = ruleFor(evidence, muscle, trainers);
    const place = rule ? placeForSet(evidence, trainers) : null;
    if (!rule || !place) continue;
    const change = changeBy(place, 1);
    const { key: lift, name } = place.exercise.lift;
    const facts = {
      muscle,
      sets: weekly(evidence, muscle),
      lift,
      name,
      from: change.from,
      to: change.to,
    };
    return [finding(reviewReason(rule, facts), muscle, [change])];
  }
  return [];
}

/** Muscles over ten hard sets a week: a fact. */
export function judgeOver(evidence: Evidence): ReviewFinding[] {
  if (evidence.work.lighter) return [];
  const over = MUSCLES.filter((muscle) => weekly(evidence, muscle) > HIGH);
  return over.length === 0
    ? []
    : [finding(reviewReason('over-range', { muscles: over.join(', ') }))];
}

const weekly = ({ work }: Evidence, muscle: Muscle): number =>
  ((work.hardSets.get(muscle) ?? 0) * 7) / CUT_LIMITS.workDays;

function ruleFor(evidence: Evidence, muscle: Muscle, trainers: readonly Watched[]): CutRule | null {
  if (weekly(evidence, muscle) < LOW) {
    return trainers.every(({ slip }) => slip === null) ? 'may-do-more-under' : null;
  }
  const steady = evidence.exercises.every(({ slip }) => slip === null);
  return steady && isSlowEnough(evidence) && trainers.every((each) => isStalled(evidence, each))
    ? 'may-do-more-plateau'
    : null;
}

function isSlowEnough({ rate }: Evidence): boolean {
  if (!rate) return true;
  return rate.now.kind === 'known' && rate.now.percentAWeek <= CUT_LIMITS.fastestForMore;
}

/** Trained for four weeks, and never more load, or more reps in the first set at the same load, than before. */
function isStalled({ past, today }: Evidence, { track }: Watched): boolean {
  const bouts = boutsOf(past, track);
  const first = bouts.findIndex(
    ({ result }) => daysBetween(result.date, today) < CUT_LIMITS.plateauDays,
  );
  if (first < 1) return false;
  const lately = bouts.slice(first - 1);
  return !lately.some(
    (bout, at) => at > 0 && lately.slice(0, at).every((each) => isMore(bout, each)),
  );
}

function isMore(a: Bout, b: Bout): boolean {
  return (
    a.load > b.load || (a.load === b.load && (a.sets[0]?.count ?? 0) > (b.sets[0]?.count ?? 0))
  );
}

/** The exercise that takes a set more: the one with the fewest, as long as no muscle it trains directly goes over ten. */
function placeForSet(evidence: Evidence, trainers: readonly Watched[]): Watched | null {
  const perWeek = evidence.program.daysPerWeek / evidence.program.days.length;
  const fitting = trainers.filter(
    ({ exercise }) =>
      setsOf(exercise) < MOST_SETS &&
      directMuscles(exercise.lift.trains).every(
        (muscle) => weekly(evidence, muscle) + perWeek <= HIGH,
      ),
  );
  return fitting.reduce<Watched | null>(
    (least, each) => (least && setsOf(least.exercise) <= setsOf(each.exercise) ? least : each),
    null,
  );
}

/** At most one set more a week. */
function isMoreLately({ past, today }: Evidence): boolean {
  return past.decisions.some(
    ({ rule, answer, date }) =>
      rule.startsWith('may-do-more') &&
      answer === 'yes' &&
      daysBetween(date, today) < CUT_LIMITS.moreEveryDays,
  );
}
