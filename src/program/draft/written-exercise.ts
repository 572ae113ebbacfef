import { type Mass, massNumber, type Unit } from '../../training/mass.ts';
import type { Exercise, Range, Rest } from '../program.ts';

/** An exercise with the keys and values of a program file. */
export function writtenExercise(exercise: Exercise, unit: Unit, gearUnit: Unit) {
  const { lift, start, bar, note, pair } = exercise;
  const after = {
    ...(pair === undefined ? {} : { pair }),
    ...(start === null ? {} : { start: writtenMass(start, unit, gearUnit) }),
    ...(bar === null ? {} : { bar }),
    ...(note === null ? {} : { note }),
  };
  if (exercise.style === 'cluster') {
    const { range, rest, mostSets } = exercise;
    return {
      lift: lift.key,
      cluster: { lead: writtenRange(range), rest: writtenRest(rest), most_sets: mostSets },
      ...after,
    };
  }
  const { sets, range, rest, reserve } = exercise;
  const counted = { [lift.counts]: writtenRange(range) };
  const stopped = lift.counts === 'seconds' ? {} : { reserve: writtenRange(reserve) };
  return { lift: lift.key, sets, ...counted, rest: writtenRest(rest), ...stopped, ...after };
}

const writtenRange = ([low, high]: Range): string | number =>
  low === high ? low : `${low}-${high}`;

/** `3-5 min`, `3 min`, `10-15 s`, `90 s - 2 min`. */
export function writtenRest({ from, to }: Rest): string {
  const isWhole = (seconds: number) => seconds % 60 === 0;
  if (from === to) return isWhole(from) ? `${from / 60} min` : `${from} s`;
  if (isWhole(from) && isWhole(to)) return `${from / 60}-${to / 60} min`;
  return isWhole(to) && to >= 120 ? `${from} s - ${to / 60} min` : `${from}-${to} s`;
}

/** A number in the file's unit; with its own unit where only that is round. */
export function writtenMass(mass: Mass, unit: Unit, gearUnit: Unit): number | string {
  const isRound = (other: Unit) =>
    Number(massNumber(mass, other, 3)) === Number(massNumber(mass, other, 9));
  return gearUnit !== unit && !isRound(unit) && isRound(gearUnit)
    ? `${massNumber(mass, gearUnit, 3)} ${gearUnit}`
    : Number(massNumber(mass, unit, 9));
}
