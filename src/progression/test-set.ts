import type { Temporal } from 'temporal-polyfill';
import { dayNumber } from '../training/day-number.ts';
import type { Gear } from '../training/gear.ts';
import { isUnderTheBar } from '../training/lift.ts';
import { tells } from './lift-strength.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
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
  const failedOn = new Map<string, number>();
  const sessions = new Map<string, number>();
  for (const result of past.results) {
    const { lift } = result.exercise;
    if (result.sets.some(({ failed }) => failed)) failedOn.set(lift, dayNumber(result.date));
    if (tells(result)) sessions.set(lift, (sessions.get(lift) ?? 0) + 1);
  }
  const daysSince = (day: number | undefined) =>
    day === undefined ? Number.POSITIVE_INFINITY : dayNumber(today) - day;
  const isRested = [...failedOn.values()].every(
    (day) => daysSince(day) >= LIMITS.daysBetweenTestSets,
  );
  const able = exercises.filter(
    (each) =>
      mayFail(each, gear) &&
      (sessions.get(each.lift) ?? 0) >= LIMITS.sessionsBeforeTestSet &&
      daysSince(failedOn.get(each.lift)) >= LIMITS.daysBetweenTestSetsOfLift,
  );
  const [chosen] = able.toSorted(
    (a, b) =>
      Number(isUnderTheBar(a)) - Number(isUnderTheBar(b)) ||
      (failedOn.get(a.lift) ?? -1) - (failedOn.get(b.lift) ?? -1),
  );
  if (!isRested || !chosen) return exercises;
  return exercises.map((each) =>
    each === chosen
      ? { ...each, testSet: true, why: [...each.why, because('test-set', { name: each.name })] }
      : each,
  );
}

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
