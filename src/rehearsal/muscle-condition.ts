import type { LifterModel } from './lifter-model.ts';

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
