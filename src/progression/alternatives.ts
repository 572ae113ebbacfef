import type { Exercise } from '../program/program.ts';
import type { Gear } from '../training/gear.ts';
import { directMuscles, type Lift, MUSCLES } from '../training/lift.ts';
import type { PrescribedExercise } from './prescription.ts';

/**
 * Lifts that can stand in for an exercise: they train one of its direct muscles directly, count the
 * same way, and can be loaded with the gear. The most alike first.
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
        isOwned(other, gear) &&
        directMuscles(other.trains).some((muscle) => direct.includes(muscle)),
    )
    .map((other) => ({ other, likeness: likeness(exercise, other) }))
    .sort((a, b) => b.likeness - a.likeness || a.other.key.localeCompare(b.other.key, 'en'))
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

/** From 0 to 3: how much of the muscles' work is shared, then the same pattern, then the same kind and loading. */
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
  const loading = a.loading === b.loading ? 0.25 : 0;
  return shared + pattern + kind + loading;
}

/** Is there something to load it with? */
function isOwned({ loading, hands }: Lift, gear: Gear): boolean {
  switch (loading) {
    case 'barbell':
      return gear.bars.length > 0;
    case 'dumbbell':
      return (
        gear.dumbbells.some(({ count }) => count >= hands) ||
        gear.handles.some(({ count }) => count >= hands)
      );
    case 'stack':
      return gear.stacks.length > 0;
    case 'band':
      return gear.bands.length > 0;
    case 'bodyweight':
    case 'free':
      return true;
  }
}
