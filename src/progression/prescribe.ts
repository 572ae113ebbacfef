import { missingFor } from '../program/check/rules/gear.ts';
import type { Day, Exercise, Program } from '../program/program.ts';
import { andText } from '../text/words.ts';
import { dayNumber } from '../training/day-number.ts';
import type { Gear } from '../training/gear.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { type Hurt, hurtsOn, LOOKED_AT_AFTER } from './hurts.ts';
import { standingIn } from './in-program.ts';
import { withoutLightGear } from './light-gear.ts';
import { lighterWeekOf, lighterWeekProposal } from './lighter-week.ts';
import { LIMITS } from './limits.ts';
import type { Circumstances, Past } from './past.ts';
import { prescribeExercise } from './prescribe-exercise.ts';
import type { PrescribedExercise, Prescription } from './prescription.ts';
import { painAnswer } from './read-case.ts';
import { because } from './rules/progression-rules.ts';
import { sharedLoads } from './same-lift.ts';
import { withTestSet } from './test-set.ts';
import { withWarmUps } from './warm-up.ts';

/** An exercise of the day by its own results, and with no more than so much. */
interface Asked {
  readonly position: number;
  readonly exercise: Exercise;
  readonly alone: PrescribedExercise;
  readonly at: (most: Mass | null) => PrescribedExercise;
}

/** Today's session of one day of the program. The same past always gives the same prescription. */
export function prescribe(
  program: Program,
  day: Day,
  whole: Past,
  circumstances: Circumstances,
): Prescription {
  const { today } = circumstances;
  // For all of them at once: what is worked out of a past is known for that very one.
  const past = day.exercises.reduce(
    (seen, exercise) => withoutLightGear(seen, exercise, circumstances),
    whole,
  );
  const week = lighterWeekOf(past, today);
  const leftOut = (each: Exercise): boolean => painAnswer(past, each, today) === 'leave-out';
  const hurts = hurtsOn(past.decisions, today);
  const dropped = new Set<string>();
  const asked: Asked[] = [];
  for (const [position, exercise] of day.exercises.entries()) {
    if (leftOut(exercise)) continue;
    const before = new Set(dropped);
    const at = (most: Mass | null) =>
      prescribeExercise(program, exercise, past, circumstances, { dropped: before, most });
    const alone = at(null);
    if (alone.why.some(({ rule }) => rule === 'one-set-fewer')) dropped.add(alone.track);
    asked.push({ position, exercise, alone, at });
  }
  const shared = sharedLoads(
    asked.map(({ exercise }) => exercise),
    asked.map(({ alone }) => alone.load),
  );
  const coldOnes = asked.map(({ position, exercise, alone, at }, place) => {
    const most = shared[place] ?? null;
    const cold = most === null ? alone : at(most);
    return sparing(standingIn(cold, day.name, position, exercise), exercise, hurts);
  });
  const { gear } = circumstances;
  const unmade = new Map(
    day.exercises.flatMap((each) => {
      const missing = missingToLift(each, gear);
      return missing === null ? [] : [[each.lift.key, missing] as const];
    }),
  );
  const exercises = withWarmUps(coldOnes, gear).map((each) => {
    const missing = unmade.get(each.lift);
    return missing === undefined ? each : withoutLoad(each, missing);
  });
  const proposal = week ? null : lighterWeekProposal(program, past, today);
  const warnings: Reason[] = [
    ...aheadOf(whole, today),
    ...notLoadable(exercises),
    ...gearMissing(exercises),
    ...hurts.flatMap((hurt) => longHurt(hurt, today)),
    ...(week ? [because('lighter-week', { until: lastDayOf(week).toString() })] : []),
    ...(proposal ? [proposal] : []),
    ...day.exercises
      .filter(leftOut)
      .map(({ lift }) => because('left-out-for-pain', { lift: lift.key, name: lift.name })),
  ];
  return {
    program: program.name,
    day: day.name,
    date: today.toString(),
    unit: program.unit,
    aim: program.aim,
    lighter: week !== null,
    daysPerWeek: program.daysPerWeek,
    restBetween: program.restBetween,
    exercises: week ? exercises : withTestSet(exercises, past, today, gear),
    warnings,
  };
}

/** A day ahead may be another time zone; more, and what is due is worked out for a wrong day. */
function aheadOf({ sessions }: Past, today: Circumstances['today']): readonly Reason[] {
  const last = sessions.at(-1)?.date;
  return last && dayNumber(last) - dayNumber(today) > 1
    ? [because('results-ahead', { date: last.toString() })]
    : [];
}

/** Says of an exercise that it loads hard what hurts now; what becomes of it is asked in the session. */
function sparing(
  cold: PrescribedExercise,
  { lift }: Exercise,
  hurts: readonly Hurt[],
): PrescribedExercise {
  const joints = hurts.map(({ joint }) => joint).filter((joint) => lift.joints.includes(joint));
  if (joints.length === 0) return cold;
  const facts = { name: lift.name, joints: andText(joints) };
  return { ...cold, hurts: joints, why: [...cold.why, because('loads-what-hurts', facts)] };
}

function longHurt({ joint, since }: Hurt, today: Circumstances['today']): readonly Reason[] {
  const { days } = since.until(today, { largestUnit: 'days' });
  return days >= LOOKED_AT_AFTER ? [because('hurts-long', { joint, days })] : [];
}

const NOT_LOADABLE: ReadonlySet<string> = new Set(['start-not-loadable', 'gear-changed']);

const OF_LOADS: ReadonlySet<string> = new Set([...NOT_LOADABLE, 'start-program', 'start-ask']);

/** What is lifted, or done on or under, may be missing; machines and bands are often those of a gym. */
function missingToLift({ lift, step }: Exercise, gear: Gear): string | null {
  const isOwn = lift.loading === 'barbell' || lift.loading === 'dumbbell';
  return missingFor({ lift: isOwn ? lift : { ...lift, loading: 'free' }, step }, gear);
}

/** The lifter is asked what is done in its place, and nothing is said of loads that the gear does not make. */
const withoutLoad = (exercise: PrescribedExercise, missing: string): PrescribedExercise => ({
  ...exercise,
  load: null,
  system: null,
  warmUp: [],
  why: [
    because('gear-missing', { name: exercise.name, missing }),
    ...exercise.why.filter(({ rule }) => !OF_LOADS.has(rule)),
  ],
});

/** One lift says what it needs; of several their names are told together, or they would fill a screen. */
function gearMissing(exercises: readonly PrescribedExercise[]): readonly Reason[] {
  const missing = exercises.flatMap(({ why }) => why.filter(({ rule }) => rule === 'gear-missing'));
  if (missing.length < 2) return missing;
  return [
    because('gear-missing-many', { names: andText(missing.map(({ facts }) => `${facts.name}`)) }),
  ];
}

/** What the gear cannot make is worth knowing before the session, with the lift's name; of several together. */
function notLoadable(exercises: readonly PrescribedExercise[]): readonly Reason[] {
  const changed = exercises.flatMap(({ why, name }) =>
    why
      .filter(({ rule }) => NOT_LOADABLE.has(rule))
      .map(({ rule, facts }) => ({ rule, facts: { ...facts, name } })),
  );
  if (changed.length < 2) return changed;
  return [because('gear-changed-many', { names: andText(changed.map(({ facts }) => facts.name)) })];
}

const lastDayOf = (week: Circumstances['today']): Circumstances['today'] =>
  week.add({ days: LIMITS.lighterWeekDays - 1 });
