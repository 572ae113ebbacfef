import { andText } from '../text/words.ts';
import { isHardSet } from '../training/effort.ts';
import type { Gear } from '../training/gear.ts';
import { MUSCLES, type Muscle } from '../training/lift.ts';
import { inTurn, turnsOf } from '../training/pairing.ts';
import type { Reason } from '../training/rule.ts';
import { plannedClusterHardSets, weeklyVolume } from '../training/volume.ts';
import { LIMITS } from './limits.ts';
import { plannedSeconds } from './planned-seconds.ts';
import type { PrescribedExercise, Prescription } from './prescription.ts';
import { because } from './rules/progression-rules.ts';
import { withWarmUps } from './warm-up.ts';

/** The time there is, and what decides how it is spent. */
export interface TimeThereIs {
  readonly minutes: number;
  /** The lifter's own pace; 1 is by the clock of sets. */
  readonly pace: number;
  readonly gear: Gear;
  /** Hard sets that the week still lacks before today, by muscle. */
  readonly lacks: ReadonlyMap<Muscle, number>;
  /** Of exercises that were begun, warm and loaded, the sets behind them, by track; absent before a session. */
  readonly begun?: ReadonlyMap<string, number>;
}

/** What is done of an exercise: so many of its sets, none at all, and rests cut at their early end. */
interface Kept {
  readonly sets: number;
  readonly early: boolean;
}

/** What is done of a day: of each exercise in order, and whether sets alternate that may. */
interface Plan {
  readonly kept: readonly Kept[];
  readonly pairs: boolean;
}

/**
 * The best session that fits into the minutes: the whole one where it does; else with rests ended
 * early; else with sets that alternate, too; else built up anew, compounds of the muscles furthest
 * under their week first, then clusters, then other isolation, each with its fewest sets before any
 * gets more; what was begun comes before them. Warm-ups and order stay. What is cut stands in `short`,
 * and the shorter plan is the one that is judged. Ours.
 */
export function shortDay(whole: Prescription, time: TimeThereIs): Prescription {
  const { exercises } = whole;
  const fits = (plan: Plan): boolean => secondsOf(whole, plan, time) <= time.minutes * 60;
  if (exercises.length === 0 || plannedSeconds(whole, time.pace) <= time.minutes * 60) return whole;
  const early = exercises.map(({ sets }) => ({ sets: sets.length, early: true }));
  const all = { kept: early, pairs: true };
  const plan = withRestsBack(
    inTurnIfNeeded(fits(all) ? all : filled(exercises, time, fits), fits),
    fits,
  );
  return told(whole, plan, time);
}

const inTurnIfNeeded = (plan: Plan, fits: (plan: Plan) => boolean): Plan => {
  const apart = { ...plan, pairs: false };
  return fits(apart) ? apart : plan;
};

/** Takes what is wanted most and still fits, until nothing does. */
function filled(
  exercises: readonly PrescribedExercise[],
  time: TimeThereIs,
  fits: (plan: Plan) => boolean,
): Plan {
  const lacks = new Map(time.lacks);
  const isNext = ({ exercise, from }: { exercise: PrescribedExercise; from: number }): boolean =>
    from === 0 && (time.begun?.has(exercise.track) ?? false);
  let plan: Plan = { kept: exercises.map(() => ({ sets: 0, early: true })), pairs: true };
  for (;;) {
    const steps = exercises
      .map((exercise, at) => ({ exercise, at, from: plan.kept[at]?.sets ?? 0 }))
      .filter(({ exercise, from }) => from < exercise.sets.length)
      .map((step) => ({
        ...step,
        to: step.from === 0 ? fewestOf(step.exercise, time) : step.from + 1,
      }))
      .sort(
        (a, b) =>
          Number(isNext(b)) - Number(isNext(a)) ||
          a.from - b.from ||
          RANK(a.exercise) - RANK(b.exercise) ||
          wanted(b.exercise, lacks) - wanted(a.exercise, lacks) ||
          a.at - b.at,
      );
    const after = ({ at, to }: { readonly at: number; readonly to: number }): Plan =>
      withKept(plan, at, { sets: to });
    const taken =
      steps.find((step) => fits(after(step))) ??
      // Something is better than nothing, and its minutes are told.
      (plan.kept.every(({ sets }) => sets === 0) ? steps[0] : undefined);
    if (!taken) return plan;
    plan = after(taken);
    const { exercise, from, to } = taken;
    for (const [muscle, sets] of volumeOf([{ ...exercise, sets: exercise.sets.slice(from, to) }])) {
      lacks.set(muscle, (lacks.get(muscle) ?? 0) - sets);
    }
  }
}

const withKept = (plan: Plan, at: number, change: Partial<Kept>): Plan => ({
  ...plan,
  kept: plan.kept.map((kept, index) => (index === at ? { ...kept, ...change } : kept)),
});

/** Compounds first; of isolation a cluster does the most in a minute. */
const RANK = ({ kind, style }: PrescribedExercise): number => {
  if (kind === 'compound') return 0;
  return style === 'cluster' ? 1 : 2;
};

const fewestOf = ({ sets, track }: PrescribedExercise, { begun }: TimeThereIs): number =>
  Math.min(Math.max(1, LIMITS.fewestSets - (begun?.get(track) ?? 0)), sets.length);

/** How far its muscles are under their week, each as much as a set counts for it. */
const wanted = ({ trains }: PrescribedExercise, lacks: ReadonlyMap<Muscle, number>): number =>
  MUSCLES.reduce(
    (sum, muscle) => sum + (trains[muscle] ?? 0) * Math.max(0, lacks.get(muscle) ?? 0),
    0,
  );

/** Gives whole rests back, from the first exercise on, as far as the minutes go. */
const withRestsBack = (plan: Plan, fits: (plan: Plan) => boolean): Plan =>
  plan.kept.reduce((so, _, at) => {
    const more = withKept(so, at, { early: false });
    return fits(more) ? more : so;
  }, plan);

const secondsOf = (whole: Prescription, plan: Plan, time: TimeThereIs): number =>
  plannedSeconds(written(whole, plan, time), time.pace);

/** The exercises that are kept, cut as the plan says. Between exercises rests end early. */
function written(whole: Prescription, { kept, pairs }: Plan, { gear }: TimeThereIs): Prescription {
  const some = whole.exercises.flatMap((exercise, at) => {
    const { sets = 0, early = false } = kept[at] ?? {};
    return sets === 0 ? [] : [cut(exercise, sets, early)];
  });
  const exercises = pairs ? inTurn(some, gear, (each) => each) : some;
  return {
    ...whole,
    restBetween: { from: whole.restBetween.from, to: whole.restBetween.from },
    exercises: withWarmUps(exercises, gear),
  };
}

function cut(exercise: PrescribedExercise, sets: number, early: boolean): PrescribedExercise {
  const of = exercise.sets.length;
  const { from } = exercise.rest;
  return {
    ...exercise,
    sets: exercise.sets.slice(0, sets),
    // The rests of a cluster are seconds, and its mini-sets start at their early end anyway.
    rest: early && exercise.style === 'straight' ? { from, to: from } : exercise.rest,
    why: sets < of ? [...exercise.why, setsReason(exercise, sets)] : exercise.why,
  };
}

const setsReason = ({ name, sets: { length } }: PrescribedExercise, sets: number): Reason =>
  because('short-sets', { name, sets, of: length });

function told(whole: Prescription, plan: Plan, time: TimeThereIs): Prescription {
  const short = written(whole, plan, time);
  const seconds = plannedSeconds(short, time.pace);
  const left = Math.max(0, Math.floor((time.minutes * 60 - seconds) / 60));
  const reasons = whole.exercises.flatMap((exercise, at): readonly Reason[] => {
    const { sets = 0 } = plan.kept[at] ?? {};
    if (sets === exercise.sets.length) return [];
    if (sets > 0) return [setsReason(exercise, sets)];
    const least = withKept(plan, at, { sets: fewestOf(exercise, time), early: true });
    const takes = Math.ceil((secondsOf(whole, least, time) - seconds) / 60);
    return [because('short-left-out', { name: exercise.name, takes, left })];
  });
  const tooLong = seconds > time.minutes * 60;
  return {
    ...short,
    short: {
      minutes: time.minutes,
      cut: [
        ...(tooLong ? [because('short-least', { minutes: Math.round(seconds / 60) })] : []),
        ...restReasons(whole, plan),
        ...pairReasons(whole, short),
        ...reasons,
        ...weekReasons(whole, short, time.lacks),
      ],
    },
  };
}

function restReasons({ exercises }: Prescription, { kept }: Plan): readonly Reason[] {
  const early = exercises.filter(
    ({ style, rest, sets }, at) =>
      kept[at]?.early &&
      kept[at].sets > 1 &&
      sets.length > 1 &&
      style === 'straight' &&
      rest.from < rest.to,
  );
  const names = early.map(({ name }) => name).join(', ');
  return [because('short-rests', { names })];
}

/** The exercises whose sets alternate only because time is short. */
function pairReasons(whole: Prescription, short: Prescription): readonly Reason[] {
  const paired = short.exercises.filter(
    ({ track, pair }) =>
      pair !== undefined && whole.exercises.find((each) => each.track === track)?.pair !== pair,
  );
  const names = turnsOf(paired).map((turn) => andText(turn.map(({ name }) => name)));
  return names.length > 0 ? [because('short-pairs', { names: names.join('; ') })] : [];
}

/** Of what was cut today, what the week lacks now. */
function weekReasons(
  whole: Prescription,
  short: Prescription,
  lacks: ReadonlyMap<Muscle, number>,
): readonly Reason[] {
  const before = volumeOf(whole.exercises);
  const after = volumeOf(short.exercises);
  const muscles = MUSCLES.flatMap((muscle) => {
    const taken = (before.get(muscle) ?? 0) - (after.get(muscle) ?? 0);
    const lacking = Math.min(taken, (lacks.get(muscle) ?? 0) - (after.get(muscle) ?? 0));
    return lacking >= 1 ? [`${muscle} ${Math.round(lacking * 2) / 2}`] : [];
  });
  return muscles.length > 0 ? [because('short-week-lacks', { muscles: muscles.join(', ') })] : [];
}

const volumeOf = (exercises: readonly PrescribedExercise[]): ReadonlyMap<Muscle, number> =>
  weeklyVolume(exercises.map((each) => ({ trains: each.trains, hardSets: hardSetsOf(each) })));

function hardSetsOf({ minis, sets, range, reserve, counts }: PrescribedExercise): number {
  if (minis) return plannedClusterHardSets(range, minis.mostSets);
  return counts === 'seconds' || isHardSet(reserve[0]) ? sets.length : 0;
}
