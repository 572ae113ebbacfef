import { missingFor } from '../program/check/rules/gear.ts';
import type { Exercise } from '../program/program.ts';
import type { Gear } from '../training/gear.ts';
import { directMuscles, type Lift, MUSCLES } from '../training/lift.ts';
import type { PrescribedExercise } from './prescription.ts';

/**
 * Lifts that can stand in for an exercise: they train one of its direct muscles directly, count the
 * same way, and the gear has what they are loaded with and done on. The most alike first; last those
 * with a kettlebell and the like, of which gear does not tell.
 */
export function alternativesFor(
  exercise: Pick<PrescribedExercise, 'lift' | 'counts' | 'trains' | 'pattern' | 'kind' | 'loading'>,
  lifts: ReadonlyMap<string, Lift>,
  gear: Gear,
): readonly Lift[] {
  const direct = directMuscles(exercise.trains);
  return [...lifts.values()]
    .filter(
      (other) =>
        other.key !== exercise.lift &&
        other.counts === exercise.counts &&
        missingFor({ lift: other, step: null }, gear) === null &&
        directMuscles(other.trains).some((muscle) => direct.includes(muscle)),
    )
    .map((other) => ({
      other,
      isUntold: other.loading === 'free' && exercise.loading !== 'free',
      likeness: likeness(exercise, other),
    }))
    .sort(
      (a, b) =>
        Number(a.isUntold) - Number(b.isUntold) ||
        b.likeness - a.likeness ||
        a.other.key.localeCompare(b.other.key, 'en'),
    )
    .map(({ other }) => other);
}

/** The exercise with another lift in its place. Its load follows that lift's own results. */
export const withLift = (exercise: Exercise, lift: Lift): Exercise => ({
  ...exercise,
  lift,
  start: null,
  bar: null,
  step: null,
  track: null,
});

/** What is lifted with them can be as heavy as it has to be; a push-up cannot. */
const WEIGHTS: ReadonlySet<Lift['loading']> = new Set(['barbell', 'dumbbell', 'stack', 'free']);

/**
 * From 0 to 3.25: how much of the muscles' work is shared, then the same pattern, then the same kind, and
 * weights in the place of weights, best of the same sort.
 */
function likeness(a: Pick<Lift, 'trains' | 'pattern' | 'kind' | 'loading'>, b: Lift): number {
  let common = 0;
  let all = 0;
  for (const muscle of MUSCLES) {
    const [one, two] = [a.trains[muscle] ?? 0, b.trains[muscle] ?? 0];
    common += Math.min(one, two);
    all += Math.max(one, two);
  }
  const shared = all === 0 ? 0 : common / all;
  const pattern = a.pattern === b.pattern ? 1 : 0;
  const kind = a.kind === b.kind ? 0.5 : 0;
  const weights = WEIGHTS.has(a.loading) && WEIGHTS.has(b.loading) ? 0.5 : 0;
  const loading = a.loading === b.loading ? 0.25 : 0;
  return shared + pattern + kind + weights + loading;
}
