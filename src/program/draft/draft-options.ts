import type { Lift } from '../../training/lift.ts';
import { loadsFor } from '../../training/loads.ts';
import { directMuscles, MUSCLES } from '../../training/muscles.ts';
import { exerciseSeconds } from '../../training/set-clock.ts';
import { weeklyVolume } from '../../training/volume.ts';
import { clockedDay, plannedHardSets } from '../check/planned-work.ts';
import type { Exercise } from '../program.ts';
import { bitOf } from './day-load.ts';
import { DRAFT_LIMITS, type Pace } from './draft-limits.ts';
import type { Option, OptionRow } from './draft-option.ts';
import { draftedExercises } from './drafted-exercises.ts';
import { groupsOf } from './movement-groups.ts';
import { faultsOf } from './option-faults.ts';
import { USUAL_LIFTS } from './usual-lifts.ts';
import type { Wishes } from './wishes.ts';

/** Every lift that a draft may take, with the sets it may have; only what the gear can load. */
export function draftOptions(
  wishes: Wishes,
  lifts: ReadonlyMap<string, Lift>,
  pace: Pace,
): readonly OptionRow[] {
  const groups = new Map<string, Tried[]>();
  for (const lift of lifts.values()) {
    const tried = triedLift(lift, wishes, pace);
    if (!tried) continue;
    const group = `${lift.pattern} ${directMuscles(lift.trains)[0]}`;
    groups.set(group, [...(groups.get(group) ?? []), tried]);
  }
  const keys = [...lifts.keys()];
  return [...groups.values()].flatMap((group) => {
    const inOrder = group.toSorted((a, b) => a.cost - b.cost || a.place - b.place);
    return inOrder
      .filter(({ isWished }, at) => isWished || at < DRAFT_LIMITS.triedLifts)
      .map(({ exercises, cost, isWished }, at) =>
        exercises.map((exercise) => {
          const dislike = isWished ? 0 : cost + at * COST.place;
          return optionOf(exercise, dislike, keys.indexOf(exercise.lift.key));
        }),
      );
  });
}

interface Tried {
  readonly exercises: readonly Exercise[];
  /** Place among the usual lifts. */
  readonly place: number;
  readonly cost: number;
  /** Did the lifter ask for it, or have it before? */
  readonly isWished: boolean;
}

/** What a draft would rather avoid, against the place of a lift among others. Ours. */
const COST = { place: 2, fault: 12, lightDumbbell: 4, noBest: 2 } as const;

function triedLift(lift: Lift, wishes: Wishes, pace: Pace): Tried | null {
  if (wishes.without.includes(lift.key)) return null;
  const before = wishes.from?.program.days
    .flatMap(({ exercises }) => exercises)
    .find((exercise) => exercise.lift.key === lift.key);
  const isWished = wishes.like.includes(lift.key) || before !== undefined;
  const place = usualPlace(lift, wishes);
  if (place === null && !isWished) return null;
  const exercises = draftedExercises(lift, before ?? null, wishes, pace);
  const [sample] = exercises;
  if (!sample) return null;
  const faults = faultsOf(sample, wishes.gear);
  const isLoadable = !faults.includes('no-gear') && (lift.loading !== 'free' || isWished);
  if (!isLoadable) return null;
  const hasBest = wishes.bests.some((best) => best.lift === lift.key);
  const cost =
    faults.length * COST.fault +
    (isSoonTooLight(lift, wishes) ? COST.lightDumbbell : 0) +
    (hasBest ? 0 : COST.noBest);
  return { exercises, place: place ?? 0, cost, isWished };
}

/** Place among the usual lifts; null for one that a draft does not take by itself. */
function usualPlace(lift: Lift, { focus, bests }: Wishes): number | null {
  const place = USUAL_LIFTS[lift.pattern]?.indexOf(lift.key) ?? -1;
  if (place >= 0) return place;
  const serves = lift.kind === 'isolation' && focus.some((muscle) => lift.trains[muscle] === 1);
  return serves || bests.some((best) => best.lift === lift.key) ? LAST : null;
}

const LAST = 100;

function isSoonTooLight({ loading, hands, kind }: Lift, { gear }: Wishes): boolean {
  if (loading !== 'dumbbell' || kind !== 'compound') return false;
  const { heaviest } = loadsFor(gear, { loading, hands, bar: null, step: null });
  return heaviest !== null && heaviest < DRAFT_LIMITS.lightDumbbell;
}

function optionOf(exercise: Exercise, cost: number, place: number): Option {
  const { lift } = exercise;
  const [first, later] = clockedDay({
    name: '',
    exercises: [exercise, exercise],
    place: exercise.place,
  });
  const volume = weeklyVolume([{ trains: lift.trains, hardSets: plannedHardSets(exercise) }]);
  return {
    exercise,
    sets: exercise.style === 'cluster' ? exercise.mostSets : exercise.sets,
    volume: Float64Array.from(MUSCLES, (muscle) => volume.get(muscle) ?? 0),
    trained: MUSCLES.flatMap((muscle, at) => (volume.has(muscle) ? [at] : [])),
    direct: directMuscles(lift.trains).reduce((bits, muscle) => bits | bitOf(muscle), 0),
    seconds: {
      first: first ? exerciseSeconds(first) : 0,
      later: later ? exerciseSeconds(later) : 0,
    },
    cost,
    order: orderOf(lift) * 1000 + place,
    groups: groupsOf(lift),
  };
}

const orderOf = ({ kind, pattern }: Lift): number =>
  ORDER.indexOf(pattern) + (kind === 'compound' ? 0 : ORDER.length);

/** Heavy lifts first, and not two for the same muscles one after the other. */
const ORDER: readonly Lift['pattern'][] = [
  'squat',
  'horizontal-push',
  'horizontal-pull',
  'hinge',
  'vertical-push',
  'vertical-pull',
  'lunge',
  'knee-extension',
  'knee-flexion',
  'shoulder-raise',
  'elbow-flexion',
  'elbow-extension',
  'calf-raise',
  'trunk',
  'carry',
];
