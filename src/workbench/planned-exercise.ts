import type { Exercise, Program } from '../program/program.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { Lift } from '../training/lift.ts';

/**
 * A prescribed exercise as a program would write it, so that progression can prescribe it anew:
 * with another lift, at another load, or after the program file has changed.
 */
export function plannedExercise(prescribed: PrescribedExercise, program: Program): Exercise {
  const { range, rest, reserve, bar, step, note, setsPlanned, minis } = prescribed;
  const base = {
    lift: program.lifts.get(prescribed.lift) ?? liftOf(prescribed),
    range,
    rest,
    reserve,
    start: null,
    bar,
    step,
    track: prescribed.track,
    warmUp: prescribed.warmUp.length > 0,
    note,
    accept: {},
    place: { line: 0, column: 0 },
  };
  return minis
    ? { ...base, style: 'cluster', mostSets: minis.mostSets }
    : { ...base, style: 'straight', sets: setsPlanned };
}

const liftOf = (prescribed: PrescribedExercise): Lift => ({
  key: prescribed.lift,
  name: prescribed.name,
  loading: prescribed.loading,
  kind: prescribed.kind,
  pattern: prescribed.pattern,
  trains: prescribed.trains,
  perSide: prescribed.perSide,
  counts: prescribed.counts,
  hands: prescribed.hands,
  bodyShare: prescribed.bodyShare,
  form: prescribed.form,
  caution: prescribed.caution,
});
