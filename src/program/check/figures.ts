import { MUSCLES, type Muscle } from '../../training/lift.ts';
import { sessionSeconds } from '../../training/set-clock.ts';
import { weeklyVolume } from '../../training/volume.ts';
import type { Day, Program } from '../program.ts';
import { clockedDay, plannedHardSets } from './planned-work.ts';

/** A muscle in the program's average week. */
export interface MuscleFigures {
  readonly muscle: Muscle;
  /** Direct sets whole, indirect ones half (Pelland 2024). */
  readonly hardSets: number;
  /** Days with at least one hard set for it. */
  readonly days: number;
  /** Days with a lift that trains it directly; 0 where it only helps. */
  readonly directDays: number;
}

/** A day of the program, and what it comes to. */
export interface DayFigures extends Day {
  readonly minutes: number;
  /** Work sets, the mini-sets of clusters among them. */
  readonly sets: number;
}

export interface ProgramFigures {
  /** In anatomical order; muscles that only help are left out where they do nothing. */
  readonly muscles: readonly MuscleFigures[];
  readonly days: readonly DayFigures[];
}

/** What a program comes to in its average week: days that rotate count as often as they come up. */
export function programFigures(program: Program): ProgramFigures {
  const perWeek = program.daysPerWeek / program.days.length;
  const volumes = program.days.map(volumeOf);
  const muscles = MUSCLES.map((muscle) => {
    const sets = volumes.map((volume) => volume.get(muscle) ?? 0);
    const direct = program.days.filter(({ exercises }) =>
      exercises.some(({ lift }) => lift.trains[muscle] === 1),
    );
    return {
      muscle,
      hardSets: tenths(perWeek * sets.reduce((sum, count) => sum + count, 0)),
      days: tenths(perWeek * sets.filter((count) => count >= 1).length),
      directDays: tenths(perWeek * direct.length),
    };
  });
  return {
    muscles: muscles.filter(({ muscle, hardSets }) => hardSets > 0 || !SMALL.includes(muscle)),
    days: program.days.map((day) => dayFigures(day, program)),
  };
}

/** Nobody misses work of their own for these. Common practice. */
const SMALL: readonly Muscle[] = ['forearms', 'lower-back', 'adductors', 'rear-delts'];

const volumeOf = ({ exercises }: Day): ReadonlyMap<Muscle, number> =>
  weeklyVolume(
    exercises.map((exercise) => ({
      trains: exercise.lift.trains,
      hardSets: plannedHardSets(exercise),
    })),
  );

function dayFigures(day: Day, { restBetween }: Program): DayFigures {
  const clocked = clockedDay(day);
  const seconds = sessionSeconds(clocked, 1, (restBetween.from + restBetween.to) / 2);
  return {
    ...day,
    minutes: Math.round(seconds / 60),
    sets: clocked.reduce((sum, { sets }) => sum + sets.length, 0),
  };
}

const tenths = (value: number): number => Math.round(value * 10) / 10;
