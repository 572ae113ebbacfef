import type { Temporal } from 'temporal-polyfill';
import { dayNumber } from '../training/day-number.ts';
import type { Gear } from '../training/gear.ts';
import { isUnderTheBar } from '../training/lift.ts';
import { resultsOfLift, resultsSince } from './bout.ts';
import { tells } from './lift-strength.ts';
import { LIMITS } from './limits.ts';
import type { Past, Result } from './past.ts';
import type { PrescribedExercise } from './prescription.ts';
import { because } from './rules/progression-rules.ts';

/**
 * The exercises of a day, one of them with the offer to go on in its last set until a rep fails: what
 * was told before against what came out shows how the lifter tells reserve. A lift once in about four
 * weeks and one lift a week, those that pin nobody and were tried longest ago first; never one that
 * can pin its lifter without safeties, a hinge with a bar, or what hurts. Ours.
 */
export function withTestSet(
  exercises: readonly PrescribedExercise[],
  past: Past,
  today: Temporal.PlainDate,
  gear: Pick<Gear, 'safeties'>,
): readonly PrescribedExercise[] {
  const lastDays = today.subtract({ days: LIMITS.daysBetweenTestSets - 1 });
  const isRested = !resultsSince(past, lastDays).some(hasFailed);
  /** Day number; 0 where none ever did. */
  const failedOn = (lift: string): number => {
    const last = resultsOfLift(past, lift).findLast(hasFailed);
    return last ? dayNumber(last.date) : 0;
  };
  const able = exercises.filter(
    (each) =>
      mayFail(each, gear) &&
      dayNumber(today) - failedOn(each.lift) >= LIMITS.daysBetweenTestSetsOfLift &&
      resultsOfLift(past, each.lift).filter(tells).length >= LIMITS.sessionsBeforeTestSet,
  );
  const [chosen] = able.toSorted(
    (a, b) =>
      Number(isUnderTheBar(a)) - Number(isUnderTheBar(b)) || failedOn(a.lift) - failedOn(b.lift),
  );
  if (!isRested || !chosen) return exercises;
  return exercises.map((each) =>
    each === chosen
      ? { ...each, testSet: true, why: [...each.why, because('test-set', { name: each.name })] }
      : each,
  );
}

const hasFailed = ({ sets }: Result): boolean => sets.some(({ failed }) => failed);

function mayFail(exercise: PrescribedExercise, { safeties }: Pick<Gear, 'safeties'>): boolean {
  const { style, counts, load, move, sets, askPain, hurts, loading, pattern } = exercise;
  const isBarHinge = loading === 'barbell' && pattern === 'hinge';
  return (
    style === 'straight' &&
    counts === 'reps' &&
    load !== null &&
    (move === 'up' || move === 'hold') &&
    sets.length > 1 &&
    !askPain &&
    hurts === undefined &&
    !isBarHinge &&
    (safeties || !isUnderTheBar(exercise))
  );
}
