import { directMuscles, type Lift, MUSCLES, type Muscle } from '../../training/lift.ts';
import { inTurn } from '../../training/pairing.ts';
import { sessionSeconds } from '../../training/set-clock.ts';
import { weeklyVolume } from '../../training/volume.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { asPaired, clockedDay, plannedHardSets } from '../check/planned-work.ts';
import { type Exercise, setsOf } from '../program.ts';
import { DRAFT_LIMITS, type Pace } from './draft-limits.ts';
import { draftedExercise, exerciseWithSets, setLimits } from './drafted-exercise.ts';
import { DIRECT, placeInDay } from './skeleton.ts';
import type { Wishes } from './wishes.ts';

/** What is done on each day, in the order of the day. */
export type DayPlans = readonly (readonly Exercise[])[];

/** Muscles that should have work of their own, those to bring up first. */
export const wantedMuscles = ({ focus }: Pick<Wishes, 'focus'>): readonly Muscle[] => [
  ...focus,
  ...(Object.keys(DIRECT) as Muscle[]).filter((muscle) => !focus.includes(muscle)),
];

/** Minutes that a session may take: the lifter's own, and never more than the check finds long. */
export const mostMinutes = ({ minutes, aim }: Pick<Wishes, 'minutes' | 'aim'>): number =>
  Math.min(minutes, CHECK_LIMITS.longSession[aim]);

/** Hard sets a week that a muscle should have at least. */
export function wantedSets(muscle: Muscle, { aim, focus }: Pick<Wishes, 'aim' | 'focus'>): number {
  const [low, high] = CHECK_LIMITS.weeklySets[aim];
  return focus.includes(muscle) ? Math.min(high, low + DRAFT_LIMITS.focusExtra) : low;
}

export const secondsOf = (
  day: readonly Exercise[],
  { between, pairs }: Pace,
  wishes: Pick<Wishes, 'gear'>,
): number =>
  sessionSeconds(
    clockedDay({ exercises: pairs ? inTurn(day, wishes.gear, asPaired) : day }),
    1,
    (between.from + between.to) / 2,
  );

/** What kept lifts that may come in out of a plan, or a muscle short of sets: the true cause. */
export function obstacle(
  plan: DayPlans,
  lifts: readonly Lift[],
  wishes: Wishes,
  pace: Pace,
): 'time' | 'long' | 'recovery' | 'full' | 'others' {
  const tries = plan.flatMap((day, at) =>
    lifts.flatMap((lift): Try[] => {
      const index = day.findIndex((one) => one.lift.key === lift.key);
      const one = day[index];
      if (one) {
        const more = exerciseWithSets(one, setsOf(one) + 1);
        return setsOf(one) < setLimits(one)[1]
          ? [{ at, day: day.with(index, more), lift: null }]
          : [];
      }
      return isRoomFor(lift, day)
        ? [{ at, day: inOrder(day, draftedExercise(lift, wishes, pace)), lift }]
        : [];
    }),
  );
  if (tries.length === 0) return 'full';
  const within = (minutes: number) =>
    tries.filter(({ day }) => secondsOf(day, pace, wishes) <= minutes * 60);
  if (within(wishes.minutes).length === 0) return 'time';
  const fit = within(mostMinutes(wishes));
  if (fit.length === 0) return 'long';
  const isRested = ({ at, day, lift }: Try) =>
    !isOverdone(plan.with(at, day), plan, wishes) && !(lift && isTrainedNextTo(plan, at, lift));
  return fit.some(isRested) ? 'others' : 'recovery';
}

/** A day with one set or one lift more. */
interface Try {
  readonly at: number;
  readonly day: readonly Exercise[];
  /** Null: a set of one that is there. */
  readonly lift: Lift | null;
}

/** Has any muscle more sets, or direct work on more days, than is recovered from, by what was added to the plan before? */
export function isOverdone(
  plan: DayPlans,
  before: DayPlans,
  { aim }: Pick<Wishes, 'aim'>,
): boolean {
  const [, high] = CHECK_LIMITS.weeklySets[aim];
  const sets = setsByMuscle(before);
  const isTooMuch = [...setsByMuscle(plan)].some(
    ([muscle, count]) => count > high && count > (sets.get(muscle) ?? 0),
  );
  return isTooMuch || MUSCLES.some((muscle) => isTooOften(muscle, plan, before));
}

/** Of four days two touch, so neighbours train no muscle directly twice. */
export function isTrainedNextTo(days: DayPlans, at: number, lift: Lift): boolean {
  const { length } = days;
  if (length < 4) return false;
  const neighbours = [days[(at + 1) % length]!, days[(at + length - 1) % length]!];
  return neighbours.flat().some((one) => sharesMuscle(one.lift, lift));
}

/** Has the day a place left, and no lift like it? */
export const isRoomFor = (lift: Lift, day: readonly Exercise[]): boolean =>
  day.length < DRAFT_LIMITS.dayLifts &&
  !day.some((one) => one.lift.key === lift.key || isTwin(one.lift, lift));

export const setsByMuscle = (plan: DayPlans): ReadonlyMap<Muscle, number> =>
  weeklyVolume(
    plan.flat().map((exercise) => ({
      trains: exercise.lift.trains,
      hardSets: plannedHardSets(exercise),
    })),
  );

export const inOrder = (day: readonly Exercise[], added: Exercise): Exercise[] => {
  const at = day.findIndex(({ lift }) => placeInDay(lift) > placeInDay(added.lift));
  return day.toSpliced(at < 0 ? day.length : at, 0, added);
};

export const sharesMuscle = (a: Lift, b: Lift): boolean =>
  directMuscles(a.trains).some((muscle) => b.trains[muscle] === 1);

/** Two compounds of one movement, or two lifts for the same muscle alone: one a day is enough. */
const isTwin = (a: Lift, b: Lift): boolean =>
  a.kind === b.kind && a.pattern === b.pattern && (a.kind === 'compound' || sharesMuscle(a, b));

function isTooOften(muscle: Muscle, plan: DayPlans, before: DayPlans): boolean {
  const directDays = (days: DayPlans, isLargeOnly: boolean) =>
    days.filter((day) =>
      day.some(
        (exercise) =>
          exercise.lift.trains[muscle] === 1 &&
          (!isLargeOnly ||
            (exercise.style === 'cluster' && exercise.mostSets > CHECK_LIMITS.smallCluster)),
      ),
    ).length;
  const isOver = (isLargeOnly: boolean, most: number) => {
    const days = directDays(plan, isLargeOnly);
    return days > most && days > directDays(before, isLargeOnly);
  };
  return isOver(false, CHECK_LIMITS.muscleDays[1]) || isOver(true, CHECK_LIMITS.clusterDays);
}
