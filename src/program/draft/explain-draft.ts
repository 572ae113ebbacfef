import { andText } from '../../text/words.ts';
import {
  basisOf,
  directMuscles,
  isUnderTheBar,
  type Lift,
  type Muscle,
} from '../../training/lift.ts';
import { turnsOf } from '../../training/pairing.ts';
import type { Reason } from '../../training/rule.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { loadableStart } from '../check/coarse-step.ts';
import { programFigures } from '../check/figures.ts';
import type { Exercise, Program } from '../program.ts';
import { barredBy } from './choose-lift.ts';
import { PACES, type Pace } from './draft-limits.ts';
import { draftReason } from './draft-rules.ts';
import { type Start, startFrom } from './start-load.ts';
import type { Wishes } from './wishes.ts';

/** What was chosen, and why. */
export function chosenReasons(program: Program, wishes: Wishes, pace: Pace): readonly Reason[] {
  const exercises = program.days.flatMap((day) => day.exercises);
  const { muscles, days } = programFigures(program);
  const [low, high] = CHECK_LIMITS.weeklySets[wishes.aim];
  const inBand = muscles.filter(({ hardSets }) => hardSets >= low && hardSets <= high).length;
  const longest = Math.max(...days.map(({ minutes }) => minutes));
  const lifts = [...new Map(exercises.map(({ lift }) => [lift.key, lift])).values()];
  const clusters = lifts.filter((lift) =>
    exercises.some((one) => one.lift === lift && one.style === 'cluster'),
  );
  const isAlone = !wishes.gear.safeties && wishes.gear.bars.length > 0;
  return [
    draftReason('draft-days', { days: wishes.days, longest, minutes: wishes.minutes }),
    ...(inBand > 0 ? [draftReason('draft-volume', { count: inBand, low, high })] : []),
    ...(isApart(program) ? [draftReason('draft-apart')] : []),
    ...keptReasons(exercises, wishes),
    ...lifts
      .filter(({ key }) => wishes.like.includes(key))
      .map(({ name }) => draftReason('draft-liked', { lift: name })),
    ...wishes.focus.flatMap((muscle) => {
      const found = muscles.find((one) => one.muscle === muscle);
      return found && found.directDays > 0
        ? [draftReason('draft-focus', { muscle, sets: found.hardSets, days: found.days })]
        : [];
    }),
    ...(clusters.length > 0 ? [draftReason('draft-clusters', { lifts: namesOf(clusters) })] : []),
    ...(pace.compound === PACES[0].compound
      ? []
      : [draftReason('draft-rests', { ...pace.compound })]),
    ...pairReasons(program),
    ...(isAlone && !lifts.some(isUnderTheBar) ? [draftReason('draft-lone')] : []),
    ...startReasons(exercises, wishes, program),
    ...madeReasons(wishes),
  ];
}

function pairReasons({ days }: Program): readonly Reason[] {
  const pairs = days.flatMap(({ exercises }) =>
    turnsOf(exercises)
      .filter(({ length }) => length > 1)
      .map((turn) => namesOf(turn.map(({ lift }) => lift))),
  );
  const names = [...new Set(pairs)].join('; ');
  return names === '' ? [] : [draftReason('draft-pairs', { names })];
}

function isApart({ days }: Program): boolean {
  const direct = days.map(
    ({ exercises }) => new Set(exercises.flatMap(({ lift }) => directMuscles(lift.trains))),
  );
  return (
    days.length >= 4 &&
    direct.every((muscles, at) => {
      const next = direct[(at + 1) % direct.length] ?? new Set<Muscle>();
      return [...muscles].every((muscle) => !next.has(muscle));
    })
  );
}

function keptReasons(exercises: readonly Exercise[], { from }: Wishes): readonly Reason[] {
  const before = from?.program.days.flatMap((day) => day.exercises) ?? [];
  if (before.length === 0) return [];
  const there = new Set(exercises.map(({ lift }) => lift.key));
  const count = before.filter(({ lift }) => there.has(lift.key)).length;
  return [draftReason('draft-kept', { count, of: before.length })];
}

function startReasons(
  exercises: readonly Exercise[],
  wishes: Wishes,
  program: Program,
): readonly Reason[] {
  const seen = new Set<string>();
  const reasons: Reason[] = [];
  const asked: Lift[] = [];
  for (const exercise of exercises) {
    const { lift, start } = exercise;
    if (seen.has(lift.key)) continue;
    seen.add(lift.key);
    const from = startFrom(exercise, wishes);
    if (from && from.start === start) reasons.push(startReason(exercise, from, program));
    else if (start === null && lift.loading !== 'bodyweight') asked.push(lift);
  }
  return asked.length > 0
    ? [...reasons, draftReason('draft-ask', { lifts: namesOf(asked) })]
    : reasons;
}

/** Starts of the program before that the gear cannot make. */
function madeReasons(wishes: Wishes): readonly Reason[] {
  const before = wishes.from?.program.days.flatMap((day) => day.exercises) ?? [];
  const changed = before.filter(
    (one) =>
      barredBy(one.lift, wishes) === null &&
      startFrom(one, wishes) === null &&
      loadableStart(one, wishes.gear) !== one.start,
  );
  const lifts = [...new Set(changed.map(({ lift }) => lift))];
  return lifts.length > 0 ? [draftReason('draft-start-made', { lifts: namesOf(lifts) })] : [];
}

function startReason(
  { lift }: Exercise,
  { start, best, share, isHeaviest }: Start,
  { lifts }: Program,
): Reason {
  const { load, reps, reserve } = best;
  const other = lifts.get(best.lift);
  const from = other?.name ?? best.lift;
  const percent = Math.round(share * 100);
  return draftReason('draft-start', {
    lift: lift.name,
    start,
    from,
    load,
    reps,
    reserve,
    share: percent,
    isHeaviest,
    basis: basisOf(lift),
    fromBasis: basisOf(other ?? lift),
  });
}

const namesOf = (lifts: readonly Lift[]): string => andText(lifts.map(({ name }) => name));
