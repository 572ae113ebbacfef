import type { Exercise, Program } from '../program/program.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { trackOf } from '../progression/track.ts';
import type { Lift } from '../training/lift.ts';

/**
 * The exercise of the program that a prescription was made from, so that progression can prescribe
 * it anew: with another lift, or at another load. For one that the program does not hold (any
 * more), as a program would write it.
 */
export function plannedExercise(prescribed: PrescribedExercise, program: Program): Exercise {
  const written = program.days
    .flatMap(({ exercises }) => exercises)
    .find((exercise) => trackOf(exercise) === prescribed.track);
  return written ?? asWritten(prescribed, program);
}

function asWritten(prescribed: PrescribedExercise, program: Program): Exercise {
  const { range, rest, reserve, bar, step, note, setsPlanned, style } = prescribed;
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
  return style === 'cluster'
    ? { ...base, style, mostSets: setsPlanned }
    : { ...base, style, sets: setsPlanned };
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
  joints: [],
  needs: [],
  form: prescribed.form,
  caution: prescribed.caution,
});
