import { type Exercise, setsOf } from '../program/program.ts';
import type { Gear } from '../training/gear.ts';
import { basisOf } from '../training/lift.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { resultsOfTrack } from './bout.ts';
import { exerciseFacts } from './case.ts';
import type { ExerciseDraft } from './draft.ts';
import { isInOwnPlace } from './in-program.ts';
import type { Past } from './past.ts';
import type { LastTime, PrescribedExercise, PrescribedSet } from './prescription.ts';
import { madeLoadable, type Rack } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { needsSafeties, trackOf } from './track.ts';

/** Writes a draft out as a prescription; the last check that its load can be made. */
export function finishDraft(
  exercise: Exercise,
  draft: ExerciseDraft,
  past: Past,
  gear: Gear,
  rack: Rack,
): PrescribedExercise {
  const { lift } = exercise;
  const load = draft.load === null ? null : madeLoadable(rack, draft.load);
  const why =
    load === null || load === draft.load ? [...draft.why] : withLoadMade(exercise, draft, load);
  if (needsSafeties(exercise, gear) && exercise.reserve[0] < 1) {
    why.push(because('reserve-without-safeties'));
  }
  const system = load === null ? null : rack.system(load);
  if (lift.loading === 'bodyweight' && load !== null && system === null) {
    why.push(because('weigh-in-missing'));
  }
  return {
    lift: lift.key,
    name: lift.name,
    loading: lift.loading,
    kind: lift.kind,
    pattern: lift.pattern,
    trains: lift.trains,
    perSide: lift.perSide,
    counts: lift.counts,
    hands: lift.hands,
    bodyShare: lift.bodyShare,
    track: trackOf(exercise),
    ...(exercise.pair !== undefined && { pair: exercise.pair }),
    style: exercise.style,
    basis: basisOf(lift),
    load,
    system,
    bar: exercise.bar,
    step: exercise.step,
    range: exercise.range,
    reserve: draft.reserve,
    reservePlanned: exercise.reserve,
    sets: setsFrom(exercise, draft),
    setsPlanned: setsOf(exercise),
    minis: exercise.style === 'cluster' ? { mostSets: draft.mostSets, aim: draft.miniAim } : null,
    rest: exercise.rest,
    warmUp: [],
    warmsUp: exercise.warmUp,
    move: draft.move,
    why,
    last: lastTime(past, trackOf(exercise)),
    askPain: draft.askPain,
    note: exercise.note,
    form: lift.form,
    caution: lift.caution,
  };
}

/**
 * Nothing may be told of a load that is not made: what would keep it gives way to the one sentence that
 * names both. What asks the lifter (after pain) stays, and asks with the load that is made.
 */
function withLoadMade(
  exercise: Exercise,
  { why, load: wish, askPain }: ExerciseDraft,
  load: Mass,
): Reason[] {
  const changed = because('gear-changed', exerciseFacts(exercise, { load, wish }));
  const ofWish = ({ facts }: Reason): boolean => facts.load === wish;
  if (askPain) {
    const asked = why.map((reason) =>
      ofWish(reason) ? { ...reason, facts: { ...reason.facts, load } } : reason,
    );
    return wish !== null && load > wish ? [...asked, changed] : asked;
  }
  return [changed, ...why.filter((reason) => !ofWish(reason))];
}

function setsFrom(exercise: Exercise, { aims, low, top }: ExerciseDraft): readonly PrescribedSet[] {
  return aims.map((aim, at) => ({
    aim,
    range: [Math.min(low, aim), Math.max(aim, at === 0 ? top : exercise.range[1])],
  }));
}

function lastTime(past: Past, track: string): LastTime | null {
  const done = resultsOfTrack(past, track).filter(({ sets }) => sets.length > 0);
  const latest = done.at(-1);
  const last =
    done.find(({ session, exercise }) => session === latest?.session && isInOwnPlace(exercise)) ??
    latest;
  const [first] = last?.sets ?? [];
  if (!last || !first) return null;
  const loads = last.sets.map(({ load }) => load);
  return {
    date: last.date.toString(),
    load: first.load,
    ...(loads.some((load) => load !== first.load) && { loads }),
    counts: last.sets.map(({ count }) => count),
    reserves: last.sets.map(({ reserve }) => reserve),
  };
}
