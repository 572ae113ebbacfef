import type { Program } from '../program/program.ts';
import { type Draw, differenceOf, type Lifters, rangeOf } from '../rehearsal/draws.ts';
import type { LifterModel } from '../rehearsal/lifter-model.ts';
import type { RehearsalOptions } from '../rehearsal/rehearse.ts';
import type { RehearsalVerdict } from '../rehearsal/verdict-of.ts';
import type { RehearsedTrack, RehearsedWeek } from '../rehearsal/weeks-of.ts';
import { MUSCLES, type Muscle } from '../training/lift.ts';
import { type Mass, MICROGRAMS, type Unit } from '../training/mass.ts';
import type { RehearseJson } from './rehearse-schema.ts';

/** A rehearsal with what it comes to. */
export interface ToldRehearsal {
  /** What it is called beside another. */
  readonly name: string;
  readonly program: Program;
  readonly options: Pick<RehearsalOptions, 'from' | 'loss' | 'minutes' | 'seed'>;
  readonly lifters: Lifters;
  readonly draws: readonly Draw[];
  /** Of the draw in the middle. */
  readonly model: LifterModel;
  readonly weeks: readonly RehearsedWeek[];
  readonly verdict: RehearsalVerdict;
  /** A sentence for each lift that the gear cannot load, and that was not trained. */
  readonly leftOut: readonly string[];
}

/** Share of strength kept at the end over the draws. */
export const keptRange = ({ draws }: Pick<ToldRehearsal, 'draws'>) =>
  rangeOf(draws.map(({ verdict }) => verdict.kept));

/** Draws that keep strength. */
export const keeping = ({ draws }: Pick<ToldRehearsal, 'draws'>): number =>
  draws.filter(({ verdict }) => verdict.keepsStrength).length;

/** @param other what it is compared with, or null */
export function rehearseJson(told: ToldRehearsal, other: ToldRehearsal | null): RehearseJson {
  const { program, options, model, weeks, verdict, lifters, draws, leftOut } = told;
  const { unit } = program;
  const [low, high] = keptRange(told);
  const difference = other && differenceOf(draws, other.draws);
  return {
    schema: 1,
    program: program.name,
    unit,
    from: options.from.toString(),
    loss: options.loss,
    cut_to_minutes: options.minutes ?? null,
    seed: options.seed,
    lifter: lifters.kind,
    draws: draws.length,
    kept_low: rounded(low, 4),
    kept_high: rounded(high, 4),
    draws_that_keep: keeping(told),
    compared:
      other && difference
        ? {
            first: told.name,
            second: other.name,
            kept: rounded(other.verdict.kept, 4),
            difference: rounded(difference.mean, 4),
            standard_error: rounded(difference.error, 4),
          }
        : null,
    model: { ...model },
    left_out: [...leftOut],
    kept: rounded(verdict.kept, 4),
    lowest: rounded(verdict.lowest, 4),
    keeps_strength: verdict.keepsStrength,
    minutes: Math.round(verdict.minutes),
    longest_minutes: Math.round(verdict.longest),
    lighter_weeks: verdict.lighterWeeks,
    muscles: verdict.muscles.map((each) => ({ ...each, mean: rounded(each.mean, 2) })),
    weeks: weeks.map((week) => ({
      week: week.week,
      from: week.from.toString(),
      sessions: week.sessions,
      minutes: week.minutes === null ? null : Math.round(week.minutes),
      body_weight: week.bodyMass === null ? null : inMass(week.bodyMass, unit, 1),
      kept: rounded(week.kept, 4),
      lighter: week.lighter,
      hard_sets: Object.fromEntries(
        MUSCLES.map((muscle) => [muscle, week.hardSets.get(muscle) ?? 0]),
      ) as Record<Muscle, number>,
      exercises: week.tracks.map((track) => trackJson(track, unit)),
    })),
  };
}

const trackJson = (
  { lift, name, track, moves, load, exercise, sets, kept }: RehearsedTrack,
  unit: Unit,
): RehearseJson['weeks'][number]['exercises'][number] => ({
  lift,
  name,
  track,
  moves: [...moves],
  load: inMass(load, unit, 3),
  basis: exercise.basis,
  counts: exercise.counts,
  done: sets.map(({ count }) => count),
  reserve: sets.map(({ reserve }) => reserve),
  kept: rounded(kept, 4),
});

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

const inMass = (mass: Mass, unit: Unit, digits: number): number =>
  rounded(mass / MICROGRAMS[unit], digits);
