import { MUSCLES, type Muscle } from '../../training/muscles.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { bitOf, type DayLoad } from './day-load.ts';
import { DRAFT_LIMITS } from './draft-limits.ts';
import { MOVEMENT_GROUPS } from './movement-groups.ts';
import type { Plan } from './plan.ts';
import type { Wishes } from './wishes.ts';

/** How much a missing thing weighs against the others. Ours: what the check finds comes first. */
const WEIGHT = {
  sameMuscleNextDay: 100,
  noDirectWork: 60,
  tooMany: 60,
  tooFew: 40,
  rareMuscle: 40,
  frequentMuscle: 40,
  dailyCluster: 40,
  eachSetOff: 12,
  focus: 25,
  liked: 45,
  exercise: 1,
  minute: 0.05,
  /** For each minute that the longest day has over the shortest. */
  uneven: 0.15,
  /** Lifts over seven on a day. */
  longList: 3,
  /** Share of a lift's cost when it comes again. */
  again: 0.6,
} as const;

/** How much each hard set under the fewest matters, also where nothing trains the muscle directly. Ours. */
const NEED: Readonly<Record<Muscle, number>> = {
  chest: 8,
  'front-delts': 2,
  'side-delts': 6,
  'rear-delts': 1.5,
  triceps: 3,
  biceps: 3,
  forearms: 0,
  lats: 8,
  'upper-back': 8,
  'lower-back': 0,
  abs: 6,
  glutes: 6,
  quads: 8,
  hamstrings: 6,
  adductors: 0,
  calves: 1.5,
};

/** For a day that is too long at all. */
const TOO_LONG = 1;

const NEEDS = MUSCLES.map((muscle) => NEED[muscle]);
const ISOLATED = bitOf('side-delts') | bitOf('abs');

/** Seconds that a day may take: what the lifter has, and no more than the check thinks wise. */
export const mostSeconds = (minutes: number): number =>
  Math.min(minutes, CHECK_LIMITS.longSession) * 60;

/** How far a plan is from what was wished for; 0 would be perfect. */
export type Score = (plan: Plan, loads: readonly DayLoad[]) => number;

/** `overtime` is what a minute too long on a day costs. */
export function scoreFor(wishes: Wishes, likedOrders: readonly number[], overtime: number): Score {
  const most = mostSeconds(wishes.minutes);
  const muscles = muscleScore(wishes);
  return (plan, loads) => {
    let score = 0;
    let longest = 0;
    let shortest = Number.POSITIVE_INFINITY;
    for (const { seconds } of loads) {
      if (seconds > most) score += ((seconds - most) / 60) * overtime + TOO_LONG;
      score += (seconds / 60) * WEIGHT.minute;
      longest = Math.max(longest, seconds);
      shortest = Math.min(shortest, seconds);
    }
    score += ((longest - shortest) / 60) * WEIGHT.uneven;
    return score + muscles(loads) + recoveryScore(loads) + liftScore(plan, likedOrders);
  };
}

function muscleScore({ aim, focus }: Wishes): (loads: readonly DayLoad[]) => number {
  const [low, high] = CHECK_LIMITS.weeklySets[aim];
  const [fewestDays, mostDays] = CHECK_LIMITS.muscleDays;
  const focused = focus.reduce((bits, muscle) => bits | bitOf(muscle), 0);
  const wanted = Math.min(high, low + DRAFT_LIMITS.focusExtra);
  return (loads) => {
    let score = 0;
    for (let at = 0; at < MUSCLES.length; at += 1) {
      const bit = 1 << at;
      let count = 0;
      let days = 0;
      let directDays = 0;
      let clusterDays = 0;
      for (const load of loads) {
        const today = load.sets[at] ?? 0;
        count += today;
        if (today >= 1) days += 1;
        if (load.direct & bit) directDays += 1;
        if (load.clusters & bit) clusterDays += 1;
      }
      if (count > high) score += WEIGHT.tooMany + (count - high) * WEIGHT.eachSetOff;
      if (directDays > 0 && count < low) score += WEIGHT.tooFew;
      if (directDays > 0 && days < fewestDays) score += WEIGHT.rareMuscle;
      if (directDays === 0 && ISOLATED & bit) score += WEIGHT.noDirectWork;
      if (directDays > mostDays) score += WEIGHT.frequentMuscle;
      if (clusterDays > CHECK_LIMITS.clusterDays) score += WEIGHT.dailyCluster;
      if (count < low) score += (low - count) * (NEEDS[at] ?? 0);
      if (focused & bit) {
        score += Math.max(0, wanted - count) * WEIGHT.focus;
        if (directDays === 0) score += WEIGHT.noDirectWork;
      }
    }
    return score;
  };
}

/** Of four days two touch, so days that follow each other share no direct muscle. */
function recoveryScore(loads: readonly DayLoad[]): number {
  if (loads.length < 4) return 0;
  let score = 0;
  for (let at = 0; at < loads.length; at += 1) {
    const next = loads[(at + 1) % loads.length]?.direct ?? 0;
    score += bitsIn(next & (loads[at]?.direct ?? 0)) * WEIGHT.sameMuscleNextDay;
  }
  return score;
}

function bitsIn(bits: number): number {
  let count = 0;
  for (let left = bits; left > 0; left &= left - 1) count += 1;
  return count;
}

function liftScore(plan: Plan, liked: readonly number[]): number {
  let score = 0;
  let groups = 0;
  for (let at = 0; at < plan.length; at += 1) {
    const day = plan[at] ?? [];
    score += day.length * WEIGHT.exercise + Math.max(0, day.length - 7) * WEIGHT.longList;
    for (const { order, cost, groups: covered } of day) {
      score += cost === 0 || !isBefore(plan, at, order) ? cost : cost * WEIGHT.again;
      groups |= covered;
    }
  }
  for (let at = 0; at < MOVEMENT_GROUPS.length; at += 1) {
    if (!(groups & (1 << at))) score += MOVEMENT_GROUPS[at]?.weight ?? 0;
  }
  for (const order of liked) if (!isBefore(plan, plan.length, order)) score += WEIGHT.liked;
  return score;
}

/** Does the lift come on a day before? */
function isBefore(plan: Plan, day: number, order: number): boolean {
  for (let at = 0; at < day; at += 1) {
    for (const option of plan[at] ?? []) if (option.order === order) return true;
  }
  return false;
}
