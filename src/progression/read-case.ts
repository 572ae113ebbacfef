import type { Temporal } from 'temporal-polyfill';
import { type Exercise, type Plan, setsOf } from '../program/program.ts';
import { type Bout, resultsOfLift, resultsOfTrack } from './bout.ts';
import type { Case } from './case.ts';
import { firstSetEvidence, laterSetsEvidence } from './estimate.ts';
import { setsExpected } from './expected-sets.ts';
import { type GateQuestion, gateOf } from './gate.ts';
import { type Layoff, layoffAfter } from './layoff.ts';
import { leftRangeOf } from './left-range.ts';
import { lighterWeekProposal } from './lighter-week.ts';
import { LIMITS } from './limits.ts';
import type { Circumstances, Decision, Past } from './past.ts';
import type { Rack } from './rack.ts';
import { droppedLately, dropRefused, type SetDrop, setDropOf } from './set-drop.ts';
import { type Slip, slipOf } from './slipping.ts';
import { landingLow, storyOf } from './story.ts';
import { reserveToKeep, trackOf } from './track.ts';
import { maySpareSet, tracksWithDrop } from './weekly-sets.ts';

/** A {@link Case} and whether its track slips. */
export interface TrainedBefore extends Case {
  readonly slip: Slip | null;
}

/** Reads what the table of moves looks at; null for a track that has never been trained. */
export function readCase(
  program: Plan,
  exercise: Exercise,
  past: Past,
  { today, gear }: Circumstances,
  rack: Rack,
  bouts: readonly Bout[],
  dropped: ReadonlySet<string> = new Set(),
): TrainedBefore | null {
  const last = bouts.at(-1);
  if (!last) return null;
  const before = bouts.at(-2);
  const planned = exercise.range;
  const story = storyOf(bouts, planned[0]);
  const landing = story.sinceLanding !== null && story.sinceLanding <= LIMITS.landingSessions;
  const range = landing ? ([landingLow(planned[0]), planned[1]] as const) : planned;
  const reserve = reserveToKeep(exercise, gear);
  const timed = exercise.lift.counts === 'seconds';
  const left = wasLeft(program, exercise, past, today)
    ? leftRangeOf({ exercise, past, rack, reserve, last })
    : null;
  // A range that begins anew neither keeps its load nor loses a set to keep it.
  const slip = left ? null : slipOf(past, exercise.lift.key, today);
  const hasSpare = maySpareSet(
    program,
    exercise,
    new Set([...tracksWithDrop(program, past), ...dropped]),
  );
  const refused = dropRefused(past, trackOf(exercise), today);
  const spare =
    hasSpare &&
    !refused &&
    !droppedLately(past, exercise.lift.key, today) &&
    // A lighter week and dropped sets exclude each other: the answer to the first is waited for.
    lighterWeekProposal(program, past, today) === null;
  const daysAway = daysSince(past, exercise.lift.key, today);
  const drop: SetDrop = left
    ? { kind: 'none' }
    : setDropOf({
        program,
        past,
        today,
        bouts,
        setsPlanned: setsOf(exercise),
        low: range[0],
        slipping: slip !== null,
        spare,
        refused,
      });
  const gate = gateOf({
    rack,
    range: planned,
    reserve,
    timed,
    isolation: exercise.lift.kind === 'isolation',
    first: firstSetEvidence(last),
    later: laterSetsEvidence(last),
    ...largestJump(last, program),
    odds: (load) => {
      const asked = {
        lift: exercise.lift.key,
        track: trackOf(exercise),
        reserve,
        lifted: rack.system(load),
        aims: last.sets.map(() => planned[0]),
      };
      return setsExpected(past, asked, today)?.map(({ odds }) => odds) ?? null;
    },
    failedTries: story.failedTries,
    before:
      before?.load === last.load
        ? { first: firstSetEvidence(before), later: laterSetsEvidence(before) }
        : null,
  });
  return {
    exercise,
    aim: program.aim,
    rack,
    story,
    gate,
    last,
    load: last.load,
    range,
    reserve,
    timed,
    daysAway,
    layoff: layoffOf(program, past, exercise.lift.key, today),
    left,
    painGone: painAnswer(past, exercise, today) === 'go-on',
    painTwice: last.pains > 1 || (last.pains > 0 && (bouts.at(-2)?.pains ?? 0) > 0),
    drop,
    spare,
    atFloor: !hasSpare,
    sets: exercise.style === 'cluster' ? 1 : exercise.sets,
    slip,
  };
}

/**
 * How far the load may go at once. In a cut by one step, where it was not plainly too light; two steps
 * where it was, and furthest after a first session, whose load was a guess.
 */
function largestJump(
  { result, sets }: Bout,
  { aim }: Plan,
): Pick<GateQuestion, 'jump' | 'twoSteps'> {
  const isLight = sets.every(({ reserve }) => (reserve ?? 0) >= LIMITS.tooEasyReserve);
  if (!isLight) return { jump: aim === 'cut' ? 0 : LIMITS.largestJump, twoSteps: 0 };
  const isGuess = result.exercise.move === 'start';
  return {
    jump: isGuess ? LIMITS.jumpAfterGuess : LIMITS.largestJump,
    twoSteps: LIMITS.twoStepsWhileLight,
  };
}

/** Today's answer to the question about pain, by lift or by track. */
export function painAnswer(
  past: Past,
  exercise: Exercise,
  today: Temporal.PlainDate,
): Decision['answer'] | null {
  const subjects = [exercise.lift.key, trackOf(exercise)];
  const answers = past.decisions.filter(
    ({ rule, subject, date }) =>
      (rule === 'pain-asked' || rule === 'pain-twice') &&
      subject !== null &&
      subjects.includes(subject) &&
      date.equals(today),
  );
  return answers.at(-1)?.answer ?? null;
}

/**
 * The rule for the time since a lift's last set in any track; null where it is short, or there was
 * none. A lift whose turn was skipped once, while its lifter trained on, was not left.
 */
export function layoffOf(
  program: Plan,
  past: Past,
  lift: string,
  today: Temporal.PlainDate,
): Layoff | null {
  const days = daysSince(past, lift, today);
  const found = layoffAfter(days);
  const turn = daysBetweenTurns(program, (each) => each.lift.key === lift);
  return found && isSkippedOnce(days, turn) && hasTrainedOn(past, today) ? null : found;
}

/** Was a track not trained for so long that one would call its lift left, whatever else the lift did? */
function wasLeft(
  program: Plan,
  exercise: Exercise,
  past: Past,
  today: Temporal.PlainDate,
): boolean {
  const track = trackOf(exercise);
  const days = daysSinceAny(resultsOfTrack(past, track), today);
  const turn = daysBetweenTurns(program, (each) => trackOf(each) === track);
  return layoffAfter(days) !== null && !isSkippedOnce(days, turn);
}

const isSkippedOnce = (days: number, turn: number): boolean => days <= 2 * turn + LIMITS.lateDays;

/** Days from one turn of such an exercise to the next, as planned; a week where no plan says. */
function daysBetweenTurns(
  { days, daysPerWeek }: Plan,
  isOne: (exercise: Exercise) => boolean,
): number {
  const turns = days.filter(({ exercises }) => exercises.some(isOne));
  const perWeek = (turns.length * daysPerWeek) / Math.max(1, days.length);
  return perWeek === 0 ? 7 : 7 / perWeek;
}

/** Was any session of the last two weeks trained? After so long without any the lifter was away. */
function hasTrainedOn(past: Past, today: Temporal.PlainDate): boolean {
  const last = past.results.findLast(({ sets }) => sets.length > 0);
  const days = last ? last.date.until(today, { largestUnit: 'days' }).days : null;
  return days !== null && layoffAfter(days) === null;
}

const daysSince = (past: Past, lift: string, today: Temporal.PlainDate): number =>
  daysSinceAny(resultsOfLift(past, lift), today);

function daysSinceAny(results: Past['results'], today: Temporal.PlainDate): number {
  const last = results.findLast(({ sets }) => sets.length > 0);
  return last ? last.date.until(today, { largestUnit: 'days' }).days : 0;
}
