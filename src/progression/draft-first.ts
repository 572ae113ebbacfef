import type { Exercise, Plan } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { exerciseFacts } from './case.ts';
import type { AskedChange, ExerciseDraft } from './draft.ts';
import { middle } from './estimate.ts';
import { firstLoad } from './first-load.ts';
import { firstMiniAim } from './first-mini-aim.ts';
import { half } from './half.ts';
import { LIMITS } from './limits.ts';
import type { Circumstances, Past } from './past.ts';
import { madeLoadable, type Rack, shareBelow } from './rack.ts';
import { layoffOf, painAnswer } from './read-case.ts';
import { because } from './rules/progression-rules.ts';
import { reserveToKeep, trackOf } from './track.ts';

interface Setting {
  readonly program: Plan;
  readonly rack: Rack;
  readonly lighter: boolean;
  readonly change: AskedChange | null;
}

/** The first session of a track. */
export function draftFirst(
  exercise: Exercise,
  past: Past,
  { today, gear }: Circumstances,
  { program, rack, lighter, change }: Setting,
): ExerciseDraft {
  const layoff = layoffOf(program, past, exercise.lift.key, today);
  const reserve = reserveToKeep(exercise, gear);
  const first = firstLoad(exercise, reserve, past, rack, layoff);
  const { load, why } = changed(exercise, rack, first, change);
  const aim = Math.floor(middle(exercise.range));
  const asks = hurtBefore(exercise, past, today);
  const gentle = lighter || (layoff?.gentle ?? false);
  const sets = exercise.style === 'cluster' ? 1 : exercise.sets;
  return {
    move: 'start',
    load,
    aims: Array.from({ length: gentle ? half(sets) : sets }, () => aim),
    mostSets: exercise.style !== 'cluster' ? 0 : gentle ? 2 : exercise.mostSets,
    miniAim: firstMiniAim(aim, null),
    low: exercise.range[0],
    top: exercise.range[1],
    reserve: layoff?.gentle ? [reserve[0] + 1, reserve[1] + 1] : reserve,
    why: asks ? [because('pain-first', exerciseFacts(exercise, { load })), ...why] : why,
    askPain: asks,
  };
}

/** Did pain stop this track before its first set ever, with nothing said to it today? */
function hurtBefore(exercise: Exercise, past: Past, today: Circumstances['today']): boolean {
  const track = trackOf(exercise);
  const last = past.results.findLast((result) => result.exercise.track === track);
  return (last?.pain ?? false) && painAnswer(past, exercise, today) === null;
}

function changed(
  exercise: Exercise,
  rack: Rack,
  first: { readonly load: Mass | null; readonly why: readonly Reason[] },
  change: AskedChange | null,
): { readonly load: Mass | null; readonly why: readonly Reason[] } {
  if (change?.kind === 'load') {
    const load = madeLoadable(rack, change.load);
    return { load, why: [because('own-load', exerciseFacts(exercise, { load }))] };
  }
  if (change?.kind === 'lighter' && first.load !== null) {
    const load = shareBelow(rack, first.load, LIMITS.painTo) ?? rack.loads.lightest;
    return {
      load,
      why: [because('pain-lighter', exerciseFacts(exercise, { load, from: first.load }))],
    };
  }
  return first;
}
