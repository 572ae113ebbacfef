import { type Equipment, NOTHING_LOADED, platesOnBar, setUp } from '../training/equipment.ts';
import { type Gear, plateQuantity } from '../training/gear.ts';
import { loadsFor } from '../training/loads.ts';
import { kilograms, massOf } from '../training/mass.ts';
import { platesHandled } from '../training/plates.ts';
import { isWarm, warmUpSets } from '../training/warm-up.ts';
import type { PrescribedExercise } from './prescription.ts';

/** A day's exercises, each with its warm-up after those before it, where the program wants one. */
export function withWarmUps(
  cold: readonly PrescribedExercise[],
  gear: Gear,
): readonly PrescribedExercise[] {
  const exercises: PrescribedExercise[] = [];
  let equipment = NOTHING_LOADED;
  for (const each of cold) {
    exercises.push(each.warmsUp === false ? each : withWarmUp(each, exercises, gear, equipment));
    if (each.load !== null) equipment = setUp(each, each.load, gear, equipment)?.after ?? equipment;
  }
  return exercises;
}

/**
 * The exercise with its warm-up sets, after those trained before it today, from what is on the bar.
 * None where the load is not known yet.
 */
export function withWarmUp(
  exercise: PrescribedExercise,
  before: readonly PrescribedExercise[],
  gear: Gear,
  equipment: Equipment,
): PrescribedExercise {
  const { load, bar, step, loading } = exercise;
  if (load === null) return { ...exercise, warmUp: [] };
  const warmUp = warmUpSets({
    work: load,
    lo: exercise.range[0],
    loads: loadsFor(withoutTiny(gear), exercise),
    style: exercise.style,
    kind: exercise.kind,
    loading,
    counts: exercise.counts,
    warmth: isWarm(exercise.trains, before) ? 'muscles-warm' : 'first-for-muscles',
    ...(loading === 'barbell' && step === null
      ? { handled: platesHandled(gear, bar, platesOnBar(gear, bar, equipment)) }
      : {}),
  });
  return { ...exercise, warmUp };
}

/** Lighter plates only make a work load exact. Ours. */
const LIGHTEST = kilograms(1);

function withoutTiny(gear: Gear): Gear {
  const plates = gear.plates.filter((kind) => massOf(plateQuantity(kind)) >= LIGHTEST);
  return plates.length === 0 ? gear : { ...gear, plates };
}
