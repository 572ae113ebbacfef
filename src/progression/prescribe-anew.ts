import { DRAFT_LIMITS } from '../program/draft/draft-limits.ts';
import { usualRatio } from '../program/draft/start-load.ts';
import type { Exercise, Plan } from '../program/program.ts';
import type { Equipment } from '../training/equipment.ts';
import type { Lift } from '../training/lift.ts';
import { micrograms, NO_MASS } from '../training/mass.ts';
import { within } from './aims.ts';
import { withLift } from './alternatives.ts';
import { boutsOf } from './bout.ts';
import type { AskedChange } from './draft.ts';
import { firstSetEvidence, loadFor, middle, repsAt } from './estimate.ts';
import type { Circumstances, Past, SetResult } from './past.ts';
import { prescribeExercise } from './prescribe-exercise.ts';
import type { PrescribedExercise, Prescription } from './prescription.ts';
import { madeLoadable, type Rack, rackFor } from './rack.ts';
import { because } from './rules/progression-rules.ts';
import { withWarmUp } from './warm-up.ts';

/** What the lifter asks for in the middle of a session. */
export type Anew = AskedChange | { readonly kind: 'other-lift'; readonly lift: Lift };

/** The session in which an exercise is prescribed anew. */
export interface Underway {
  readonly prescription: Prescription;
  readonly lifts: ReadonlyMap<string, Lift>;
  /** Work sets of this exercise so far, at the load that is left. */
  readonly done: readonly SetResult[];
  /** Exercises that were trained in it, this one too: their muscles are warm. */
  readonly trained: readonly PrescribedExercise[];
  readonly equipment: Equipment;
}

/**
 * An exercise of a session that runs, as it is at another load, lighter for pain, as another lift or
 * with its pain gone: its aims, its warm-ups and its plates from what is on the bar now. Everything
 * comes from the session's own copy, so it stays what it was whatever becomes of the program file.
 */
export function prescribeAnew(
  exercise: PrescribedExercise,
  change: Anew,
  underway: Underway,
  past: Past,
  circumstances: Circumstances,
): PrescribedExercise {
  const written = asWritten(exercise, underway.lifts);
  const plan = planOf(underway.prescription);
  const cold =
    change.kind === 'other-lift'
      ? asShort(
          likeThis(
            prescribeExercise(plan, withLift(written, change.lift), past, circumstances),
            exercise,
            past,
            circumstances,
          ),
          exercise,
          underway.prescription,
        )
      : asMany(prescribeExercise(plan, written, past, circumstances, { change }), exercise);
  const asked = change.kind === 'load' ? fromToday(cold, underway, past, circumstances) : cold;
  const { inProgram, pair } = exercise;
  const now = { ...asked, ...(inProgram && { inProgram }), ...(pair && { pair }) };
  const { trained, equipment } = underway;
  return written.warmUp ? withWarmUp(now, trained, circumstances.gear, equipment) : now;
}

/**
 * A lift that was never done starts from what the one in whose place it comes was done with, by the
 * usual ratio between the two, at 90 %; without a ratio or results the lifter is asked.
 */
function likeThis(
  other: PrescribedExercise,
  exercise: PrescribedExercise,
  past: Past,
  { today, gear }: Circumstances,
): PrescribedExercise {
  const bodyMass = past.bodyMassOn(today);
  const rack = rackFor(other, gear, bodyMass);
  if (other.why.some(({ rule }) => rule === 'start-body'))
    return assistedLike(other, exercise, rack);
  const ratio = usualRatio(other.lift, exercise.lift);
  const last = boutsOf(past, exercise.track).at(-1);
  if (other.load !== null || other.counts === 'seconds' || ratio === null || !last) return other;
  const evidence = firstSetEvidence(last);
  const able = loadFor(
    rackFor(exercise, gear, bodyMass),
    middle(other.range),
    middle(other.reserve),
    evidence,
  );
  if (able === null) return other;
  const wish = Math.floor(able * ratio * DRAFT_LIMITS.substituteShare);
  const load = rack.loads.atOrBelow(micrograms(wish)) ?? rack.loads.lightest;
  const facts = { load, basis: other.basis, from: exercise.name };
  return { ...other, load, system: rack.system(load), why: [because('start-like', facts)] };
}

/** Who needs help with one lift of the body needs as much with another like it. */
function assistedLike(
  other: PrescribedExercise,
  { name, loading, load: help }: PrescribedExercise,
  rack: Rack,
): PrescribedExercise {
  if (loading !== 'bodyweight' || help === null || help >= NO_MASS) return other;
  const load = madeLoadable(rack, help);
  if (load >= NO_MASS) return other;
  const why = [because('start-helped', { load, basis: other.basis, from: name })];
  return { ...other, load, system: rack.system(load), why };
}

/** The next time of an exercise that no program holds any more: of the session's own copy. */
export const prescribeAgain = (
  exercise: PrescribedExercise,
  { prescription, lifts }: Pick<Underway, 'prescription' | 'lifts'>,
  past: Past,
  circumstances: Circumstances,
): PrescribedExercise =>
  prescribeExercise(planOf(prescription), asWritten(exercise, lifts), past, circumstances);

/** No set is dropped anew inside a session. */
const planOf = ({ aim }: Prescription): Plan => ({ aim, cutFrom: null, daysPerWeek: 0, days: [] });

/** As many sets as the session had planned: what was dropped for today stays dropped. */
function asMany(anew: PrescribedExercise, { sets, minis }: PrescribedExercise): PrescribedExercise {
  const last = anew.sets.at(-1);
  return {
    ...anew,
    sets: last ? sets.map((_, at) => anew.sets[at] ?? last) : anew.sets,
    minis: anew.minis && minis ? { ...anew.minis, mostSets: minis.mostSets } : anew.minis,
  };
}

/** Another lift on a day cut to the time there is takes no more sets than the one it stands in for. */
const asShort = (
  other: PrescribedExercise,
  { sets }: PrescribedExercise,
  { short }: Prescription,
): PrescribedExercise =>
  short ? { ...other, sets: other.sets.slice(0, Math.max(1, sets.length)) } : other;

/** What today's last set tells counts for more than what the last session did. */
function fromToday(
  exercise: PrescribedExercise,
  { done }: Underway,
  past: Past,
  { today, gear }: Circumstances,
): PrescribedExercise {
  const set = done.at(-1);
  const { load, range, reserve, counts } = exercise;
  if (!set || load === null || counts === 'seconds') return exercise;
  const rack = rackFor(exercise, gear, past.bodyMassOn(today));
  const evidence = {
    load: set.load,
    reps: Math.max(1, set.count),
    reserve: set.reserve ?? reserve[0],
  };
  const expected = repsAt(rack, load, middle(reserve), evidence);
  if (expected === null) return exercise;
  const aim = within(range, Math.floor(expected));
  return { ...exercise, sets: exercise.sets.map((each) => ({ ...each, aim })) };
}

/** The exercise as its program wrote it when the session was opened. */
function asWritten(prescribed: PrescribedExercise, lifts: Underway['lifts']): Exercise {
  const { range, rest, bar, step, note, setsPlanned, style, track } = prescribed;
  const base = {
    lift: lifts.get(prescribed.lift) ?? {
      ...prescribed,
      key: prescribed.lift,
      joints: [],
      needs: [],
    },
    range,
    rest,
    reserve: prescribed.reservePlanned ?? prescribed.reserve,
    start: null,
    bar,
    step,
    track,
    warmUp: prescribed.warmsUp ?? prescribed.warmUp.length > 0,
    note,
    accept: {},
    place: { line: 0, column: 0 },
  };
  return style === 'cluster'
    ? { ...base, style, mostSets: setsPlanned }
    : { ...base, style, sets: setsPlanned };
}
