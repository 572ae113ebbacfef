import type { PrescribedExercise } from '../progression/prescription.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';
import type { SessionEvent, SetPlace, Shortened } from './events.ts';
import { isCluster, setsBefore, setsOfLift } from './next-set.ts';
import { pairedIn, pairedNow } from './pairs.ts';
import { laterBy } from './stage-now.ts';
import type { DoneSet, ExerciseState, LiftWork, SessionState } from './state.ts';

type Event<Type extends SessionEvent['type']> = Extract<SessionEvent, { type: Type }>;

/** A set was put down: the rest begins at that instant. */
export function withSetDown(state: SessionState, event: Event<'set-done'>): SessionState {
  const { exercise, role, index, at } = event;
  const place: SetPlace = { exercise, role, index };
  const found = state.exercises[exercise];
  if (!found) return state;
  const startedAt = startOf(state, place, at);
  const changed =
    role === 'warm-up'
      ? { ...found, warmUpsDone: found.warmUpsDone + 1 }
      : withSet(found, event, startedAt);
  return {
    ...state,
    exercises: state.exercises.map((each, i) => (i === exercise ? changed : each)),
    stage: { kind: 'all-done' },
    current: exercise,
    goesFirst: null,
    loaded: [...state.loaded, { id: event.id, exercise: found.prescribed, load: event.load }],
    lastDown: { place, track: found.prescribed.track, at, changedBy: 0, pausedMs: 0 },
  };
}

function withSet(
  exercise: ExerciseState,
  {
    id,
    at,
    exercise: position,
    role,
    index,
    load,
    count,
    reserve,
    failed,
    entered,
  }: Event<'set-done'>,
  startedAt: Reading | null,
): ExerciseState {
  const set: DoneSet = {
    id,
    exercise: position,
    role,
    index,
    load,
    count,
    reserve,
    ...(failed && { failed }),
    entered,
    startedAt,
    at,
  };
  return {
    ...exercise,
    judgedBy: exercise.judgedBy ?? exercise.prescribed,
    done: [...exercise.done, set],
  };
}

function startOf({ stage, lastDown }: SessionState, place: SetPlace, at: Reading): Reading | null {
  if (stage.kind === 'lifting') return stage.since;
  if (place.role !== 'mini' || !lastDown || stage.kind !== 'resting') return null;
  const early = laterBy(lastDown.at, stage.running.rest.from * 1000 + lastDown.pausedMs);
  return elapsedMs(lastDown.at, at) < elapsedMs(lastDown.at, early) ? at : early;
}

/** Each number given replaces the one that stood; the set counts as typed. */
export function amendSets(state: SessionState, event: Event<'set-amended'>): SessionState {
  const { load, count, reserve, failed } = event;
  const loaded =
    load === undefined
      ? state.loaded
      : state.loaded.map((each) => (each.id === event.of ? { ...each, load } : each));
  return eachSet({ ...state, loaded }, (set) =>
    set.id === event.of
      ? {
          ...set,
          ...(load !== undefined && { load }),
          ...(count !== undefined && { count }),
          ...(reserve !== undefined && { reserve }),
          // Reps in reserve take back that one was tried and failed.
          ...(failed !== undefined ? { failed } : reserve ? { failed: false } : {}),
          entered: 'typed',
        }
      : set,
  );
}

export function confirmSets(state: SessionState, event: Event<'sets-confirmed'>): SessionState {
  const seen = new Set(event.of);
  return eachSet(state, (set) =>
    seen.has(set.id) && set.entered === 'as-planned' ? { ...set, entered: 'confirmed' } : set,
  );
}

function eachSet(state: SessionState, change: (set: DoneSet) => DoneSet): SessionState {
  const changed = <Work extends LiftWork>(work: Work): Work => ({
    ...work,
    done: work.done.map(change),
  });
  const exercises = state.exercises.map((each) => ({
    ...changed(each),
    earlier: each.earlier.map(changed),
  }));
  return { ...state, exercises };
}

/**
 * The exercise as `as` prescribes it. On the same track the sets done stay and only what is left
 * changes. Another track starts with no sets; the work on the one given up is kept apart, and
 * taken up again when the lifter comes back to it.
 */
export function replaceLift(exercise: ExerciseState, as: PrescribedExercise): ExerciseState {
  const { leftOut: _, notes, earlier, ...present } = exercise;
  const { inProgram } = present.prescribed;
  // Whatever takes its place stands where it stood.
  const by = inProgram ? { ...as, inProgram } : as;
  if (by.track === present.prescribed.track) {
    return { ...exercise, ...prescribedAnew(present, by), leftOut: false };
  }
  const before = earlier.find(({ prescribed }) => prescribed.track === by.track);
  const others = earlier.filter((work) => work !== before);
  const work = before ? prescribedAnew(before, by) : noWork(by);
  const kept = hasResult(present) ? [...others, present] : others;
  return { ...work, leftOut: false, notes, earlier: kept };
}

type DayShortened = Extract<SessionEvent, { type: 'day-shortened' }>;

/**
 * The session with less time: what was cut was never asked for, so that the rest of it counts as
 * done as planned. Sets that the lifter added go first. What is left out altogether can still be
 * chosen.
 */
export function shortenDay(
  state: SessionState,
  { minutes, exercises, pairs, restBetween, cut }: DayShortened,
): SessionState {
  const by = new Map(exercises.map((each) => [each.exercise, each]));
  return {
    ...state,
    pairs: (pairs ?? []).reduce(pairedNow, state.pairs),
    exercises: state.exercises.map((each, at) => {
      const plan = by.get(at);
      if (!plan) return each;
      const isOut = plan.sets <= each.done.length + each.skipped;
      if (isOut && each.done.length === 0) return { ...each, leftOut: true };
      return {
        ...each,
        added: addedWithin(each, plan.sets),
        prescribed: asked(each.prescribed, each, plan),
        judgedBy: each.judgedBy && asked(each.judgedBy, each, plan),
      };
    }),
    prescription: {
      ...state.prescription,
      restBetween,
      exercises: state.prescription.exercises.map((each, at) => {
        const [plan, now] = [by.get(at), state.exercises[at]];
        if (!plan || !now) return each;
        const isNone = plan.sets === 0 && setsBefore(now) === 0;
        return isNone ? { ...each, sets: [], minis: null } : asked(each, now, plan);
      }),
      short: { minutes, cut },
    },
  };
}

/** Of the sets that the lifter added, those within so many sets in all. */
const addedWithin = (now: ExerciseState, sets: number): number =>
  isCluster(now) ? 0 : Math.min(now.added, Math.max(0, sets - setsOfLift(now)));

/** What is asked of an exercise, with those sets that were done of it as another lift. */
const asked = (
  prescribed: PrescribedExercise,
  now: ExerciseState,
  { sets, rest }: Shortened,
): PrescribedExercise => ({
  ...prescribed,
  sets: prescribed.sets.slice(0, sets - addedWithin(now, sets) + setsBefore(now)),
  rest,
});

/** Is there anything to keep of this work: sets, or a pain to ask about next time? */
export const hasResult = ({ done, pain }: LiftWork): boolean => done.length > 0 || pain;

const prescribedAnew = (work: LiftWork, by: PrescribedExercise): LiftWork => ({
  ...work,
  prescribed: by,
  doneBeforeChange: work.done.length,
});

type Opening = Extract<SessionEvent, { type: 'session-opened' }>;

/** The state before the first set. Its stage is left to be settled. */
export function openSession({ session, device, prescription, at, zone }: Opening): SessionState {
  return {
    session,
    device,
    prescription,
    exercises: prescription.exercises.map((exercise, position) =>
      untouched(placed(exercise, prescription.day, position)),
    ),
    stage: { kind: 'all-done' },
    current: null,
    chosen: null,
    goesFirst: null,
    lastDown: null,
    pairs: pairedIn(prescription.exercises),
    loaded: [],
    pausedSince: null,
    pausedMs: 0,
    openedAt: at,
    lastAt: at,
    zone,
    notes: [],
    events: [],
  };
}

/** Journals of old do not tell where an exercise stood: it was in the order of the day. */
const placed = (exercise: PrescribedExercise, day: string, position: number): PrescribedExercise =>
  exercise.inProgram
    ? exercise
    : { ...exercise, inProgram: { day, position, lift: exercise.lift } };

const untouched = (prescribed: PrescribedExercise): ExerciseState => ({
  ...noWork(prescribed),
  leftOut: false,
  notes: [],
  earlier: [],
});

const noWork = (prescribed: PrescribedExercise): LiftWork => ({
  prescribed,
  judgedBy: null,
  done: [],
  doneBeforeChange: 0,
  warmUpsDone: 0,
  warmUpsSkipped: false,
  added: 0,
  skipped: 0,
  clusterEnd: null,
  pain: false,
});
