import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import type { Program } from '../program/program.ts';
import { directMuscles, MUSCLES, type Muscle } from '../training/lift.ts';
import type { RehearsedWeek } from './weeks-of.ts';

/** What a rehearsal is held against. */
export const REHEARSAL_LIMITS = {
  /** Share of strength kept at the end. Ours. */
  kept: 0.97,
} as const;

/** Hard sets of a muscle over the weeks that count. */
export interface MuscleWork {
  readonly muscle: Muscle;
  readonly mean: number;
  readonly least: number;
  readonly most: number;
  /** Where the average week lies, to the nearest half set, as sets are counted. */
  readonly judged: 'too-little' | 'inside' | 'too-much';
}

export interface RehearsalVerdict {
  /** Share of strength kept in the last week, and the least of any week. */
  readonly kept: number;
  readonly lowest: number;
  readonly keepsStrength: boolean;
  /** Every muscle that the program trains directly. */
  readonly muscles: readonly MuscleWork[];
  /** Mean minutes of a session, and of the week with the longest ones. */
  readonly minutes: number;
  readonly longest: number;
  readonly lighterWeeks: number;
}

/**
 * What the weeks come to. Weeks without a session and lighter weeks say nothing of the program's
 * volume, so they are left out of it.
 */
export function verdictOf(program: Program, weeks: readonly RehearsedWeek[]): RehearsalVerdict {
  const full = weeks.filter(({ lighter, sessions }) => !lighter && sessions > 0);
  const minutes = weeks.flatMap((week) => (week.minutes === null ? [] : [week.minutes]));
  const kept = weeks.at(-1)?.kept ?? 1;
  return {
    kept,
    lowest: Math.min(1, ...weeks.map((week) => week.kept)),
    keepsStrength: kept >= REHEARSAL_LIMITS.kept,
    muscles: directOf(program).map((muscle) =>
      workOf(muscle, full, CHECK_LIMITS.weeklySets[program.aim]),
    ),
    minutes: minutes.reduce((sum, each) => sum + each, 0) / Math.max(1, minutes.length),
    longest: Math.max(0, ...minutes),
    lighterWeeks: weeks.filter(({ lighter }) => lighter).length,
  };
}

function directOf(program: Program): readonly Muscle[] {
  const exercises = program.days.flatMap((day) => day.exercises);
  const direct = new Set(exercises.flatMap(({ lift }) => directMuscles(lift.trains)));
  return MUSCLES.filter((muscle) => direct.has(muscle));
}

function workOf(
  muscle: Muscle,
  weeks: readonly RehearsedWeek[],
  [low, high]: readonly [number, number],
): MuscleWork {
  const sets = weeks.map(({ hardSets }) => hardSets.get(muscle) ?? 0);
  const mean = sets.reduce((sum, each) => sum + each, 0) / Math.max(1, sets.length);
  const counted = Math.round(mean * 2) / 2;
  return {
    muscle,
    mean,
    least: sets.length === 0 ? 0 : Math.min(...sets),
    most: Math.max(0, ...sets),
    judged: counted < low ? 'too-little' : counted > high ? 'too-much' : 'inside',
  };
}
