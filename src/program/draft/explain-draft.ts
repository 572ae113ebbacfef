import type { Lift } from '../../training/lift.ts';
import { NO_MASS } from '../../training/mass.ts';
import { directMuscles, type Muscle } from '../../training/muscles.ts';
import type { Reason } from '../../training/rule.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { programFigures } from '../check/figures.ts';
import { isUnderTheBar } from '../check/under-the-bar.ts';
import { andText } from '../check/words.ts';
import type { Exercise, Program } from '../program.ts';
import { PACES } from './draft-limits.ts';
import { draftReason } from './draft-rules.ts';
import type { FoundPlan } from './find-plan.ts';
import { startLoad } from './start-load.ts';
import type { Best, Wishes } from './wishes.ts';

/** What was chosen, and why. */
export function chosenReasons(
  program: Program,
  wishes: Wishes,
  { pace }: Pick<FoundPlan, 'pace'>,
): readonly Reason[] {
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
    draftReason('draft-volume', { count: inBand, low, high }),
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
    ...(pace.compound === PACES[0]?.compound
      ? []
      : [draftReason('draft-rests', { ...pace.compound })]),
    ...(isAlone && !lifts.some(isUnderTheBar) ? [draftReason('draft-lone')] : []),
    ...startReasons(exercises, wishes),
  ];
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

function startReasons(exercises: readonly Exercise[], wishes: Wishes): readonly Reason[] {
  const seen = new Set<string>();
  const reasons: Reason[] = [];
  const asked: Lift[] = [];
  for (const exercise of exercises) {
    const { lift, start } = exercise;
    if (seen.has(lift.key)) continue;
    seen.add(lift.key);
    const best = wishes.bests.find((one) => one.lift === lift.key);
    const isFromBest =
      best && startLoad(exercise, best, wishes.bodyMass, wishes.gear) === start && start !== null;
    if (isFromBest) reasons.push(draftReason('draft-start', startFacts(exercise, best)));
    else if (start === null && lift.loading !== 'bodyweight') asked.push(lift);
  }
  return asked.length > 0
    ? [...reasons, draftReason('draft-ask', { lifts: namesOf(asked) })]
    : reasons;
}

const startFacts = ({ lift, start }: Exercise, { load, reps, reserve }: Best) => ({
  lift: lift.name,
  start: start ?? NO_MASS,
  load,
  reps,
  reserve,
});

const namesOf = (lifts: readonly Lift[]): string => andText(lifts.map(({ name }) => name));
