import type { Lift, Pattern } from '../../training/lift.ts';
import { DEFAULTS, defaultReserve } from '../defaults.ts';
import type { Exercise, Range } from '../program.ts';
import { DRAFT_LIMITS, type Pace } from './draft-limits.ts';
import { startLoad } from './start-load.ts';
import type { Wishes } from './wishes.ts';

/**
 * A lift with each number of sets that it may have. One that the program had before stays as the
 * lifter wrote it, but for the sets.
 */
export function draftedExercises(
  lift: Lift,
  before: Exercise | null,
  wishes: Wishes,
  pace: Pace,
): readonly Exercise[] {
  const exercise = before ?? newExercise(lift, pace);
  const best = wishes.bests.find((one) => one.lift === lift.key);
  const start = best ? startLoad(exercise, best, wishes.bodyMass, wishes.gear) : null;
  const started = { ...exercise, start: start ?? exercise.start };
  if (started.style === 'cluster') {
    return withBefore(DRAFT_LIMITS.clusterSets, started.mostSets).map((mostSets) => ({
      ...started,
      mostSets,
    }));
  }
  const usual = lift.kind === 'compound' ? DRAFT_LIMITS.compoundSets : DRAFT_LIMITS.isolationSets;
  return withBefore(usual, before ? started.sets : null).map((sets) => ({ ...started, sets }));
}

const withBefore = (usual: readonly number[], before: number | null): readonly number[] =>
  [...new Set([...usual, ...(before === null ? [] : [before])])].sort((a, b) => a - b);

/** Isolation that is done as clusters, since they are quick. Common practice. */
const IN_CLUSTERS: readonly Pattern[] = [
  'shoulder-raise',
  'elbow-flexion',
  'elbow-extension',
  'trunk',
  'calf-raise',
];

/** A lift as it is usually done, without a load. */
export function newExercise(lift: Lift, pace: Pace): Exercise {
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
  const isCluster =
    lift.kind === 'isolation' && lift.counts === 'reps' && IN_CLUSTERS.includes(lift.pattern);
  if (isCluster) {
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
    rest:
      lift.kind === 'compound' && lift.counts === 'reps'
        ? pace.compound
        : DRAFT_LIMITS.isolationRest,
    reserve: defaultReserve(lift, 'straight'),
  };
}

/** Ours, inside the 4–10 reps of heavy compounds (common practice). */
function rangeOf({ kind, counts, pattern, loading }: Lift): Range {
  if (counts === 'seconds') return [30, 60];
  if (kind === 'isolation') return [8, 12];
  if (pattern === 'shoulder-raise') return [8, 10];
  if (pattern === 'vertical-pull' && loading === 'bodyweight') return [4, 8];
  const isHeavy = loading === 'barbell' && HEAVY.includes(pattern);
  return isHeavy ? [5, 8] : [6, 10];
}

const HEAVY: readonly Pattern[] = ['squat', 'horizontal-push', 'vertical-push'];
