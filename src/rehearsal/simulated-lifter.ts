import { hardSetsOf } from '../cut/set-credit.ts';
import type { Result } from '../progression/past.ts';
import { directMuscles, MUSCLES, type Muscle, type Shares } from '../training/lift.ts';
import { weeklyVolume } from '../training/volume.ts';
import type { LifterModel } from './lifter-model.ts';

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

/** What training has left in a muscle, as shares of strength. */
export interface MuscleCondition {
  readonly fitness: number;
  readonly fatigue: number;
  /** Hard sets today and on each of the six days before, the latest first. */
  readonly sets: readonly number[];
}

const DAYS_COUNTED = 7;

/** Fitness that so many hard sets a week lead to: ever less for each set more. */
const fitnessOf = (setsAWeek: number, { trained, halfSets }: LifterModel): number =>
  (trained * setsAWeek) / (setsAWeek + halfSets);

const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);

/** A muscle that has been trained with the same sets every week for long, on a morning. */
export function settledCondition(model: LifterModel): MuscleCondition {
  const { setsBefore, setFatigue } = model;
  return {
    fitness: fitnessOf(setsBefore, model),
    fatigue: setFatigue * setsBefore,
    sets: Array<number>(DAYS_COUNTED).fill(setsBefore / DAYS_COUNTED),
  };
}

/** The morning after: fitness goes towards what the sets of the last seven days lead to, fatigue towards none. */
export function dayLater(
  { fitness, fatigue, sets }: MuscleCondition,
  model: LifterModel,
): MuscleCondition {
  const kept = Math.exp(-1 / model.fitnessDays);
  return {
    fitness: fitness * kept + fitnessOf(sum(sets), model) * (1 - kept),
    fatigue: fatigue * Math.exp(-1 / model.fatigueDays),
    sets: [0, ...sets.slice(0, DAYS_COUNTED - 1)],
  };
}

/** After so many hard sets. All of them tire, those beyond many in seven days more. */
export function afterSets(
  { fitness, fatigue, sets }: MuscleCondition,
  model: LifterModel,
  hardSets: number,
): MuscleCondition {
  const room = Math.max(0, model.manySets - sum(sets));
  const many = Math.max(0, hardSets - room);
  // A set a week adds up to its fatigue: as much every seven days as goes in them.
  const each = model.setFatigue * DAYS_COUNTED * Math.expm1(1 / model.fatigueDays);
  return {
    fitness,
    fatigue: fatigue + each * (hardSets + many * (model.manyCost - 1)),
    sets: sets.map((done, at) => (at === 0 ? done + hardSets : done)),
  };
}

/** What the condition gives to strength, as a share of it. */
export const givenStrength = ({ fitness, fatigue }: MuscleCondition): number => fitness - fatigue;
