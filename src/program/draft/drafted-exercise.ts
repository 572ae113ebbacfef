import type { Lift, Pattern } from '../../training/lift.ts';
import type { Unit } from '../../training/mass.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { loadableStart } from '../check/coarse-step.ts';
import { DEFAULTS, defaultReserve } from '../defaults.ts';
import type { Exercise, Range, Rest } from '../program.ts';
import { exerciseBefore } from './choose-lift.ts';
import { DRAFT_LIMITS, PACES, type Pace } from './draft-limits.ts';
import { startFrom } from './start-load.ts';
import type { Wishes } from './wishes.ts';
import { writtenExercise } from './written-exercise.ts';

/** A lift with the fewest sets, as the lifter had it before where they did, and with its first load. */
export function draftedExercise(lift: Lift, wishes: Wishes, pace: Pace): Exercise {
  const before = exerciseBefore(lift.key, wishes);
  const exercise = exerciseWithSets(before ?? newExercise(lift, pace), fewestSets(lift));
  return {
    ...exercise,
    start: startFrom(exercise, wishes)?.start ?? loadableStart(exercise, wishes.gear),
  };
}

export const exerciseWithSets = (exercise: Exercise, sets: number): Exercise =>
  exercise.style === 'cluster' ? { ...exercise, mostSets: sets } : { ...exercise, sets };

const limits = (lift: Lift, isCluster: boolean): Range => {
  if (isCluster) return DRAFT_LIMITS.clusterSets;
  return lift.kind === 'compound' ? DRAFT_LIMITS.compoundSets : DRAFT_LIMITS.isolationSets;
};

const fewestSets = (lift: Lift): number => limits(lift, isInCluster(lift))[0];

export const setLimits = ({ lift, style }: Exercise): Range => limits(lift, style === 'cluster');

/** Isolation that is done as clusters, since they are quick. Common practice. */
const IN_CLUSTERS: readonly Pattern[] = [
  'shoulder-raise',
  'elbow-flexion',
  'elbow-extension',
  'trunk',
  'calf-raise',
];

const isInCluster = ({ kind, counts, pattern }: Lift): boolean =>
  kind === 'isolation' && counts === 'reps' && IN_CLUSTERS.includes(pattern);

function newExercise(lift: Lift, pace: Pace): Exercise {
  const base = {
    lift,
    start: null,
    bar: null,
    step: null,
    track: null,
    warmUp: true,
    note: null,
    accept: {},
    place: { line: 1, column: 1 },
  };
  if (isInCluster(lift)) {
    return {
      ...base,
      style: 'cluster',
      range: [12, 15],
      rest: DEFAULTS.clusterRest,
      mostSets: DEFAULTS.mostSets,
      reserve: defaultReserve(lift, 'cluster'),
    };
  }
  return {
    ...base,
    style: 'straight',
    sets: 3,
    range: rangeOf(lift),
    rest: restOf(lift, pace),
    reserve: defaultReserve(lift, 'straight'),
  };
}

/** Heavy compounds rest long; many reps of a light one, and isolation, need less. Common practice. */
function restOf(lift: Lift, pace: Pace): Rest {
  if (lift.kind !== 'compound' || lift.counts !== 'reps') return DRAFT_LIMITS.isolationRest;
  return rangeOf(lift)[0] >= CHECK_LIMITS.lightReps ? DRAFT_LIMITS.lightRest : pace.compound;
}

/** Ours, inside the 4–10 reps of heavy compounds (common practice). */
function rangeOf({ key, kind, counts, pattern, loading }: Lift): Range {
  if (counts === 'seconds') return [30, 60];
  if (kind === 'isolation') return [8, 12];
  if (pattern === 'shoulder-raise') return [8, 10];
  if (loading === 'bodyweight') return BODY_RANGES[pattern] ?? [8, 15];
  const isHeavy = loading === 'barbell' && HEAVY.includes(pattern);
  return isHeavy || PULLS_FROM_THE_FLOOR.includes(key) ? [5, 8] : [6, 10];
}

/** Without a load to add, reps have to do it. */
const BODY_RANGES: Readonly<Partial<Record<Pattern, Range>>> = {
  'vertical-pull': [4, 8],
  'vertical-push': [6, 12],
  squat: [15, 25],
  lunge: [10, 20],
  hinge: [10, 20],
};

const HEAVY: readonly Pattern[] = ['squat', 'horizontal-push', 'vertical-push'];
const PULLS_FROM_THE_FLOOR = ['deadlift', 'sumo-deadlift', 'trap-bar-deadlift'];

/** How a lift is usually done, with the keys of a program file; its load is left to the first session. */
export const usualExercise = (lift: Lift, unit: Unit, gearUnit: Unit) =>
  writtenExercise(newExercise(lift, PACES[0]), unit, gearUnit);
