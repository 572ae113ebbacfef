import type { Lift } from '../../training/lift.ts';
import { MUSCLES, type Muscle } from '../../training/muscles.ts';
import type { Reason } from '../../training/rule.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { programFigures } from '../check/figures.ts';
import { isUnderTheBar } from '../check/under-the-bar.ts';
import { andText, keyWords } from '../check/words.ts';
import type { Program } from '../program.ts';
import { bitOf } from './day-load.ts';
import { DRAFT_LIMITS } from './draft-limits.ts';
import { draftReason } from './draft-rules.ts';
import type { FoundPlan } from './find-plan.ts';
import type { Wishes } from './wishes.ts';

/** What of the wishes, and of the rules of a good program, could not be kept. */
export function givenUpReasons(
  program: Program,
  wishes: Wishes,
  { rows }: Pick<FoundPlan, 'rows'>,
  lifts: ReadonlyMap<string, Lift>,
): readonly Reason[] {
  return [
    ...movementReasons(program, rows),
    ...muscleReasons(program, wishes, rows),
    ...likedReasons(program, wishes, rows, lifts),
  ];
}

type Rows = FoundPlan['rows'];

/** Movements whose lack is told; the others follow from the muscles. */
const MOVEMENTS = [
  ['push', ['horizontal-push', 'vertical-push']],
  ['pull', ['horizontal-pull', 'vertical-pull']],
  ['squat or lunge', ['squat', 'lunge']],
  ['hinge', ['hinge']],
] as const;

function movementReasons({ days }: Program, rows: Rows): readonly Reason[] {
  const there = days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift));
  return MOVEMENTS.filter(([, patterns]) => !there.some(covers(patterns))).map(
    ([movement, patterns]) => {
      const canBe = rows.some(([option]) => option && covers(patterns)(option.exercise.lift));
      return draftReason('draft-movement-out', { movement, cause: canBe ? 'time' : 'gear' });
    },
  );
}

const covers =
  (patterns: readonly string[]) =>
  ({ kind, pattern }: Lift): boolean =>
    kind === 'compound' && patterns.includes(pattern);

/** Muscles told one by one; the others together. */
const MAJOR: readonly Muscle[] = [
  'chest',
  'lats',
  'upper-back',
  'side-delts',
  'abs',
  'glutes',
  'quads',
  'hamstrings',
];
const MINOR: readonly Muscle[] = ['front-delts', 'rear-delts', 'triceps', 'biceps', 'calves'];

function muscleReasons(program: Program, { aim, focus }: Wishes, rows: Rows): readonly Reason[] {
  const [low, high] = CHECK_LIMITS.weeklySets[aim];
  const figures = new Map(programFigures(program).muscles.map((one) => [one.muscle, one]));
  const setsOf = (muscle: Muscle) => figures.get(muscle)?.hardSets ?? 0;
  const isDirect = (muscle: Muscle) => (figures.get(muscle)?.directDays ?? 0) > 0;
  const causeOf = (muscle: Muscle) =>
    rows.some(([option]) => option && (option.direct & bitOf(muscle)) !== 0) ? 'time' : 'gear';
  const reasons = MUSCLES.flatMap((muscle): Reason[] => {
    const sets = setsOf(muscle);
    const facts = { muscle, sets, low, high, cause: causeOf(muscle) };
    if (sets > high) return [draftReason('draft-muscle-high', facts)];
    if (focus.includes(muscle)) {
      const wanted = Math.min(high, low + DRAFT_LIMITS.focusExtra);
      if (!isDirect(muscle)) return [draftReason('draft-muscle-out', facts)];
      return sets < wanted ? [draftReason('draft-focus-low', { ...facts, wanted })] : [];
    }
    const isWanted = MAJOR.includes(muscle) || isDirect(muscle);
    if (sets >= low && (isDirect(muscle) || !ISOLATED.includes(muscle))) return [];
    if (!isWanted) return [];
    const isOut = !isDirect(muscle) && (sets === 0 || ISOLATED.includes(muscle));
    return [draftReason(isOut ? 'draft-muscle-out' : 'draft-muscle-low', facts)];
  });
  const minor = MINOR.filter(
    (muscle) => setsOf(muscle) < low && !isDirect(muscle) && !focus.includes(muscle),
  );
  if (minor.length === 0) return reasons;
  const muscles = andText(minor.map((muscle) => keyWords(muscle)));
  return [...reasons, draftReason('draft-minor-low', { muscles, low })];
}

const ISOLATED: readonly Muscle[] = ['side-delts', 'abs'];

function likedReasons(
  { days }: Program,
  { like, without, gear }: Wishes,
  rows: Rows,
  lifts: ReadonlyMap<string, Lift>,
): readonly Reason[] {
  const there = new Set(days.flatMap(({ exercises }) => exercises.map(({ lift }) => lift.key)));
  return like.flatMap((key): Reason[] => {
    const lift = lifts.get(key);
    if (!lift) return [draftReason('draft-liked-out', { lift: key, cause: 'unknown' })];
    if (there.has(key)) {
      const isPinned = isUnderTheBar(lift) && !gear.safeties;
      return isPinned ? [draftReason('draft-pinned', { lift: lift.name })] : [];
    }
    const canBe = rows.some(([option]) => option?.exercise.lift.key === key);
    const cause = without.includes(key) ? 'impossible' : canBe ? 'time' : 'gear';
    return [draftReason('draft-liked-out', { lift: lift.name, cause })];
  });
}
