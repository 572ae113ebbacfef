import type {
  ClusterExercise,
  Exercise,
  Program,
  StraightExercise,
} from '../../src/program/program.ts';
import type { Lift } from '../../src/training/lift.ts';

const PLACE = { line: 1, column: 1 };

export function aLift(changes: Partial<Lift> = {}): Lift {
  return {
    key: 'row',
    name: 'Row',
    loading: 'barbell',
    kind: 'compound',
    pattern: 'horizontal-pull',
    trains: { lats: 1, 'upper-back': 1, biceps: 0.5 },
    perSide: false,
    counts: 'reps',
    hands: 2,
    bodyShare: null,
    joints: [],
    needs: [],
    form: null,
    caution: null,
    ...changes,
  };
}

export const pullUp = aLift({
  key: 'pull-up',
  name: 'Pull-up',
  loading: 'bodyweight',
  pattern: 'vertical-pull',
  bodyShare: 1,
});

export const sideRaise = aLift({
  key: 'side-raise',
  name: 'Side raise',
  loading: 'dumbbell',
  kind: 'isolation',
  pattern: 'shoulder-raise',
  trains: { 'side-delts': 1 },
});

export const plank = aLift({
  key: 'plank',
  name: 'Plank',
  loading: 'bodyweight',
  kind: 'isolation',
  pattern: 'trunk',
  trains: { abs: 1 },
  counts: 'seconds',
  bodyShare: null,
});

const BASE = {
  reserve: [1, 2],
  start: null,
  bar: null,
  step: null,
  track: null,
  warmUp: true,
  note: null,
  accept: {},
  place: PLACE,
} as const;

/** Three sets of 5–8 of a barbell row, one or two left in reserve. */
export function straight(changes: Partial<StraightExercise> = {}): StraightExercise {
  return {
    ...BASE,
    style: 'straight',
    lift: aLift(),
    sets: 3,
    range: [5, 8],
    rest: { from: 180, to: 300 },
    ...changes,
  };
}

/** A lead set of 12–15 and up to four mini-sets of side raises. */
export function cluster(changes: Partial<ClusterExercise> = {}): ClusterExercise {
  return {
    ...BASE,
    style: 'cluster',
    lift: sideRaise,
    range: [12, 15],
    reserve: [0, 1],
    rest: { from: 10, to: 15 },
    mostSets: 5,
    ...changes,
  };
}

export function aDay(name: string, ...exercises: readonly Exercise[]) {
  return { name, exercises, place: PLACE };
}

/** A cut on three days a week, with one day of these exercises. */
export function aProgram(exercises: readonly Exercise[], changes: Partial<Program> = {}): Program {
  return {
    name: 'Invented',
    file: 'invented.yaml',
    unit: 'kg',
    aim: 'cut',
    daysPerWeek: 3,
    cutFrom: null,
    rate: [0.5, 1],
    goal: { mass: null, date: null },
    monthlyCycle: false,
    restBetween: { from: 120, to: 180 },
    days: [aDay('A', ...exercises)],
    lifts: new Map(exercises.map(({ lift }) => [lift.key, lift])),
    accept: {},
    ...changes,
  };
}
