import { hardSetsOf } from '../cut/set-credit.ts';
import type { Result } from '../progression/past.ts';
import { directMuscles, MUSCLES, type Muscle, type Shares } from '../training/lift.ts';
import { weeklyVolume } from '../training/volume.ts';
import type { LifterModel } from './lifter-model.ts';
import {
  afterSets,
  dayLater,
  givenStrength,
  type MuscleCondition,
  settledCondition,
} from './muscle-condition.ts';

/** A lifter on one morning. */
export interface SimulatedLifter {
  readonly model: LifterModel;
  /** Strength of each lift on the first morning, by its key: micrograms really lifted once, or seconds held. */
  readonly first: ReadonlyMap<string, number>;
  readonly muscles: ReadonlyMap<Muscle, MuscleCondition>;
  /** Strength gained by itself, and lost to the deficit, since the first morning: a factor. */
  readonly grown: number;
}

export function newLifter(model: LifterModel, first: ReadonlyMap<string, number>): SimulatedLifter {
  const settled = settledCondition(model);
  return { model, first, muscles: new Map(MUSCLES.map((each) => [each, settled])), grown: 1 };
}

/** The lifter on the next morning, while losing `loss` % of body weight a week. */
export function nextMorning(lifter: SimulatedLifter, loss: number): SimulatedLifter {
  const muscles = new Map(
    [...lifter.muscles].map(([each, condition]) => [each, dayLater(condition, lifter.model)]),
  );
  const { growth, spared, deficitCost } = lifter.model;
  const aWeek = growth - deficitCost * Math.max(0, loss - spared);
  return { ...lifter, muscles, grown: lifter.grown * (1 + aWeek) ** (1 / 7) };
}

/** The lifter after what was done in a session. */
export function afterSession(lifter: SimulatedLifter, results: readonly Result[]): SimulatedLifter {
  const volume = weeklyVolume(
    results.map((result) => ({ trains: result.exercise.trains, hardSets: hardSetsOf(result) })),
  );
  const muscles = new Map(lifter.muscles);
  for (const [muscle, hardSets] of volume) {
    const before = muscles.get(muscle);
    if (before) muscles.set(muscle, afterSets(before, lifter.model, hardSets));
  }
  return { ...lifter, muscles };
}

/** Present strength in a lift ÷ that on the first morning: the mean over the muscles it trains directly. */
export function strengthShare({ model, muscles, grown }: SimulatedLifter, trains: Shares): number {
  const start = givenStrength(settledCondition(model));
  const direct = directMuscles(trains);
  const given = direct.reduce((sum, muscle) => {
    const condition = muscles.get(muscle);
    return sum + (condition ? givenStrength(condition) - start : 0);
  }, 0);
  return Math.max(0.1, 1 + given / Math.max(1, direct.length)) * grown;
}

/** True strength in a lift today, without the luck of the day: micrograms really lifted once, or seconds held. */
export function trueStrength(
  lifter: SimulatedLifter,
  lift: { readonly lift: string; readonly trains: Shares },
): number {
  return (lifter.first.get(lift.lift) ?? 0) * strengthShare(lifter, lift.trains);
}
