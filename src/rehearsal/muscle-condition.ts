import type { LifterModel } from './lifter-model.ts';

/** What training has left in a muscle, in units of hard sets. */
export interface MuscleCondition {
  readonly fitness: number;
  readonly fatigue: number;
  /** Hard sets that built fitness today and on each of the six days before, the latest first. */
  readonly built: readonly number[];
}

const DAYS_COUNTED = 7;

/** A muscle that has been trained with the same sets every week for long, on a morning. */
export function settledCondition(model: LifterModel): MuscleCondition {
  const { setsBefore, saturation, fitnessDays, fatigueDays, fitnessGain, fatigueGain } = model;
  const built = Math.min(setsBefore, saturation) / DAYS_COUNTED;
  // A gain left every day adds up to gain × (x + x² + x³ …) with x = e^(−1/days).
  return {
    fitness: (fitnessGain * built) / Math.expm1(1 / fitnessDays),
    fatigue: (fatigueGain * setsBefore) / DAYS_COUNTED / Math.expm1(1 / fatigueDays),
    built: Array<number>(DAYS_COUNTED).fill(built),
  };
}

/** The morning after, while losing `loss` % of body weight a week. */
export function dayLater(
  { fitness, fatigue, built }: MuscleCondition,
  model: LifterModel,
  loss: number,
): MuscleCondition {
  const fatigueDays = model.fatigueDays * (1 + model.deficitSlowing * Math.max(0, loss));
  return {
    fitness: fitness * Math.exp(-1 / model.fitnessDays),
    fatigue: fatigue * Math.exp(-1 / fatigueDays),
    built: [0, ...built.slice(0, DAYS_COUNTED - 1)],
  };
}

/** After so many hard sets. Fitness is built by as many as the seven days have room for; fatigue by all. */
export function afterSets(
  { fitness, fatigue, built }: MuscleCondition,
  model: LifterModel,
  hardSets: number,
): MuscleCondition {
  const room = Math.max(0, model.saturation - built.reduce((sum, sets) => sum + sets, 0));
  const builds = Math.min(hardSets, room);
  return {
    fitness: fitness + model.fitnessGain * builds,
    fatigue: fatigue + model.fatigueGain * hardSets,
    built: built.map((sets, at) => (at === 0 ? sets + builds : sets)),
  };
}

/** What the condition gives to strength, in units. */
export const givenStrength = ({ fitness, fatigue }: MuscleCondition): number => fitness - fatigue;
