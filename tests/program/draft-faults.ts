import { CATALOGUE } from '../../src/program/catalogue.ts';
import { CHECK_LIMITS } from '../../src/program/check/check-limits.ts';
import { programFigures } from '../../src/program/check/figures.ts';
import { clockedDay } from '../../src/program/check/planned-work.ts';
import { missingFor } from '../../src/program/check/rules/gear.ts';
import type { Draft } from '../../src/program/draft/draft-program.ts';
import type { Wishes } from '../../src/program/draft/wishes.ts';
import type { Day } from '../../src/program/program.ts';
import { KITS } from '../../src/training/kits.ts';
import {
  isUnderTheBar,
  JOINTS,
  type Joint,
  type Lift,
  type Pattern,
} from '../../src/training/lift.ts';
import { sessionSeconds } from '../../src/training/set-clock.ts';
import { someWishes } from './some-wishes.ts';

/** Every combination that drafts are held to: days, minutes, kit, aim and what hurts. */
export const GRID: readonly Wishes[] = ([2, 3, 4] as const).flatMap((days) =>
  [20, 30, 45, 60, 75, 90].flatMap((minutes) =>
    KITS.flatMap((kit) =>
      (['cut', 'maintain', 'build'] as const).flatMap((aim) =>
        [[], ...JOINTS.map((joint): readonly Joint[] => [joint])].map((hurts) => {
          // Nobody is asked to squat or bench press under a bar that nothing catches.
          const gear = { ...kit.gear('kg'), safeties: kit.name.startsWith('rack') };
          return someWishes({ name: kit.name, days, minutes, gear, aim, hurts });
        }),
      ),
    ),
  ),
);

const GROUPS: readonly (readonly Pattern[])[] = [
  ['squat', 'lunge'],
  ['hinge'],
  ['horizontal-push'],
  ['vertical-push'],
  ['horizontal-pull'],
  ['vertical-pull'],
];

/** Lifts that a newcomer can do: the harder or odder ones of the catalogue excuse nothing. */
const USUAL = [
  'goblet-squat',
  'split-squat',
  'bodyweight-split-squat',
  'romanian-deadlift',
  'dumbbell-romanian-deadlift',
  'single-leg-hip-thrust',
  'push-up',
  'dumbbell-floor-press',
  'overhead-press',
  'dumbbell-shoulder-press',
  'pike-push-up',
  'dumbbell-row',
  'inverted-row',
  'barbell-row',
  'pull-up',
  'neutral-grip-pull-up',
  'dumbbell-side-raise',
  'dumbbell-curl',
  'dumbbell-triceps-extension',
  'crunch',
  'single-leg-calf-raise',
].map((key) => CATALOGUE.get(key)!);

/** What no coach would hand over, in words; none for a good draft. */
export function draftFaults({ program, findings }: Draft, wishes: Wishes): readonly string[] {
  const lifts = program.days.map(({ exercises }) => exercises.map(({ lift }) => lift));
  const minutes = Math.min(wishes.minutes, CHECK_LIMITS.longSession[wishes.aim]);
  const isAble = (lift: Lift) =>
    missingFor({ lift, step: null }, wishes.gear) === null &&
    !lift.joints.some((joint) => wishes.hurts.includes(joint)) &&
    (wishes.gear.safeties || !isUnderTheBar(lift));
  const secondsLeft = (day: Day) => minutes * 60 - secondsOf(day, program.restBetween);
  /** Has a day the time, and fewer than the eight lifts that are enough for any? */
  const hasTimeFor = (needed: number) =>
    program.days.some((day) => day.exercises.length < 8 && secondsLeft(day) >= needed);
  const faults: string[] = [];
  for (const { severity, rule } of findings) if (severity === 'error') faults.push(`error ${rule}`);
  for (const { rule } of findings) if (rule.startsWith('pair-')) faults.push(rule);
  for (const day of program.days) if (secondsLeft(day) < 0) faults.push(`over on ${day.name}`);
  for (const patterns of GROUPS) {
    const isOf = ({ kind, pattern }: Lift) => kind === 'compound' && patterns.includes(pattern);
    const canBe = USUAL.some((lift) => isOf(lift) && isAble(lift));
    if (!lifts.flat().some(isOf) && canBe && hasTimeFor(COMPOUND)) {
      faults.push(`no ${patterns.join(' or ')}`);
    }
  }
  for (const muscle of ['side-delts', 'abs', 'biceps', 'triceps', 'calves'] as const) {
    const isOf = ({ trains }: Lift) => trains[muscle] === 1;
    const able = USUAL.filter((lift) => isOf(lift) && isAble(lift));
    const hasTime = able.some(({ perSide }) => hasTimeFor(clusterSeconds(perSide)));
    if (!lifts.flat().some(isOf) && hasTime) {
      faults.push(`nothing for ${muscle}`);
    }
  }
  for (const [at, day] of lifts.entries()) {
    const compounds = day.filter(({ kind }) => kind === 'compound');
    const patterns = compounds.map(({ pattern }) => pattern);
    if (new Set(patterns).size < patterns.length) faults.push('two of one movement on a day');
    if (day.some((lift) => lift.joints.some((joint) => wishes.hurts.includes(joint)))) {
      faults.push('a lift that loads what hurts');
    }
    const first = day.findIndex(({ kind }) => kind === 'isolation');
    if (first >= 0 && day.slice(first).some(({ kind }) => kind === 'compound')) {
      faults.push('one joint before many');
    }
    const hinge = day.findIndex(isHardOnTheBack);
    if (hinge >= 0 && day.slice(0, hinge).some(({ pattern }) => pattern.endsWith('pull'))) {
      faults.push('a row before the hinge');
    }
    const next = lifts[(at + 1) % lifts.length]!;
    if (day.some(isHardOnTheBack) && next.some(isHardOnTheBack)) faults.push('two hinges running');
  }
  for (const { exercises } of program.days) {
    for (const { lift, range } of exercises) {
      if (lift.loading === 'bodyweight' && lift.pattern === 'squat' && range[0] < 12) {
        faults.push('squats without a load for few reps');
      }
    }
  }
  const [, high] = CHECK_LIMITS.weeklySets[wishes.aim];
  for (const { muscle, hardSets } of programFigures(program).muscles) {
    if (hardSets > high) faults.push(`${hardSets} sets for ${muscle}`);
  }
  return faults;
}

/** Seconds: the tightest two sets of 8 with 3 min between, three warm-ups and the way there. */
const COMPOUND = 3 * 60 + 2 * 24 * 2 + 180 + 75;
/** Seconds: a cluster of three with its warm-up and the way there, at the roomiest. */
const clusterSeconds = (perSide: boolean): number =>
  60 + (39 + 2 * 12) * (perSide ? 2 : 1) + 2 * 12.5 + 150;

const isHardOnTheBack = ({ pattern, kind, joints }: Lift): boolean =>
  pattern === 'hinge' && kind === 'compound' && joints.includes('back');

const secondsOf = (day: Day, { from, to }: { readonly from: number; readonly to: number }) =>
  sessionSeconds(clockedDay(day), 1, (from + to) / 2);
