import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { programFigures } from '../program/check/figures.ts';
import { setsOf } from '../program/program.ts';
import { type Bout, boutsOf } from '../progression/bout.ts';
import { tracksWithDrop } from '../progression/weekly-sets.ts';
import { directMuscles, MUSCLES, type Muscle } from '../training/lift.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { type CutRule, reviewReason } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Evidence, Watched } from './evidence.ts';
import { changeBy, finding, type ReviewFinding } from './finding.ts';
import { setsShort } from './work-done.ts';

/** More sets of one exercise than these make another exercise the better choice. Common practice. */
const MOST_SETS = 5;

const bandOf = ({ program }: Evidence) => CHECK_LIMITS.weeklySets[program.aim];

/**
 * One set more for one muscle, the one with the least work first, where strength as a whole is not
 * surely less than at the start: the program plans, and it had,
 * fewer than the band, and nothing that trains it slips; or nothing slips at all, weight does not
 * fall faster than 1 % a week, and no lift that trains it directly gained a rep or load in four
 * weeks. Only of full weeks in which all that was planned for it was done.
 */
export function judgeMore(evidence: Evidence): ReviewFinding[] {
  const { exercises, work, lighterWeek, pause, program, past, kept } = evidence;
  // Low volume from missed sessions is not mended by longer ones; a lighter week is not judged.
  if (lighterWeek || pause || work.lighter || work.fullOn !== null) return [];
  if (work.sessions < work.planned || isMoreLately(evidence)) return [];
  // What is lost already is not won back by more work while losing weight.
  if (kept !== null && kept.high < 1) return [];
  const dropped = tracksWithDrop(program, past);
  const short = new Set(musclesShort(evidence).map(({ muscle }) => muscle));
  for (const muscle of directOf(evidence)) {
    const trainers = exercises.filter(({ exercise }) => exercise.lift.trains[muscle] === 1);
    // What was taken away is not given back in the same breath, nor what was not done.
    if (short.has(muscle) || trainers.some(({ track }) => dropped.has(track))) continue;
    const rule = ruleFor(evidence, muscle, trainers);
    const place = rule ? placeForSet(evidence, trainers) : null;
    if (!rule || !place) continue;
    const change = changeBy(place, 1);
    const { key: lift, name } = place.exercise.lift;
    const facts = {
      muscle,
      sets: weekly(evidence, muscle),
      low: bandOf(evidence)[0],
      lift,
      name,
      from: change.from,
      to: change.to,
    };
    return [finding(reviewReason(rule, facts), muscle, [change])];
  }
  return [];
}

/** Muscles over the band: a fact. */
export function judgeOver(evidence: Evidence): ReviewFinding[] {
  const [, high] = bandOf(evidence);
  if (evidence.work.lighter) return [];
  const over = MUSCLES.filter((muscle) => weekly(evidence, muscle) > high);
  return over.length === 0
    ? []
    : [finding(reviewReason('over-range', { muscles: over.join(', '), high }))];
}

/** The muscle under the band that most of what was planned for it is missing of, where the sessions were trained: a fact. */
export function judgeNotDone(evidence: Evidence): ReviewFinding[] {
  const { work } = evidence;
  if (work.lighter || work.fullOn !== null || work.sessions < work.planned) return [];
  const [most] = musclesShort(evidence).sort((a, b) => b.planned - b.sets - (a.planned - a.sets));
  return most ? [finding(reviewReason('planned-not-done', { ...most }), most.muscle)] : [];
}

/** Muscles with fewer hard sets than the band and the program ask for, for want of sets that were done and count. */
function musclesShort(evidence: Evidence) {
  const { past, work, program } = evidence;
  const [low] = bandOf(evidence);
  const direct = new Set(directOf(evidence));
  return programFigures(program).muscles.flatMap(({ muscle, hardSets: planned }) => {
    const sets = weekly(evidence, muscle);
    const isShort = sets < low && sets <= planned - CUT_LIMITS.setsMissing;
    if (!direct.has(muscle) || !isShort) return [];
    // A cluster that came to its own end is done, however short.
    const short = setsShort(past, work, muscle);
    return short.left + short.light > 0 ? [{ muscle, sets, planned, ...short }] : [];
  });
}

/** Muscles that the program trains directly, those with the least work first. */
function directOf(evidence: Evidence): Muscle[] {
  const direct = new Set(
    evidence.exercises.flatMap(({ exercise }) => directMuscles(exercise.lift.trains)),
  );
  return MUSCLES.filter((muscle) => direct.has(muscle)).sort(
    (a, b) => weekly(evidence, a) - weekly(evidence, b),
  );
}

const weekly = ({ work }: Evidence, muscle: Muscle): number =>
  ((work.hardSets.get(muscle) ?? 0) * 7) / CUT_LIMITS.workDays;

function ruleFor(evidence: Evidence, muscle: Muscle, trainers: readonly Watched[]): CutRule | null {
  if (weekly(evidence, muscle) < bandOf(evidence)[0]) {
    // A program that asks for enough is not short because the weeks before it asked for none of it.
    if (trainers.every((each) => !isInWork(evidence, each))) return null;
    return trainers.every(({ slip }) => slip === null) ? 'may-do-more-under' : null;
  }
  const steady = evidence.exercises.every(({ slip }) => slip === null);
  return steady && isSlowEnough(evidence) && trainers.every((each) => isStalled(evidence, each))
    ? 'may-do-more-plateau'
    : null;
}

/** Was it a part of the weeks that are judged? */
const isInWork = ({ past, work: { from, to } }: Evidence, { exercise: { lift } }: Watched) =>
  past.results.some(
    ({ exercise, date }) =>
      exercise.lift === lift.key && daysBetween(from, date) >= 0 && daysBetween(date, to) >= 0,
  );

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

/**
 * The exercise that takes a set more: the one with the fewest, as long as no muscle it trains
 * directly goes over the band, and no pain was marked at it.
 */
function placeForSet(evidence: Evidence, trainers: readonly Watched[]): Watched | null {
  const { program } = evidence;
  const [, high] = bandOf(evidence);
  const perWeek = program.daysPerWeek / program.days.length;
  const fitting = trainers.filter(
    (each) =>
      setsOf(each.exercise) < MOST_SETS &&
      !hurtLately(evidence, each) &&
      directMuscles(each.exercise.lift.trains).every(
        (muscle) => weekly(evidence, muscle) + perWeek <= high,
      ),
  );
  return fitting.toSorted((a, b) => setsOf(a.exercise) - setsOf(b.exercise))[0] ?? null;
}

const hurtLately = ({ past, today }: Evidence, { exercise: { lift } }: Watched): boolean =>
  past.results.some(
    ({ pain, exercise, date }) =>
      pain && exercise.lift === lift.key && daysBetween(date, today) < CUT_LIMITS.painDays,
  );

/** At most one set more a week. */
function isMoreLately({ past, today }: Evidence): boolean {
  return past.decisions.some(
    ({ rule, answer, date }) =>
      rule.startsWith('may-do-more') &&
      answer === 'yes' &&
      daysBetween(date, today) < CUT_LIMITS.moreEveryDays,
  );
}
