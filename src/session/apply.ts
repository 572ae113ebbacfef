import type { Rest } from '../program/program.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';
import type { SessionEvent, SetPlace } from './events.ts';
import { inForce } from './in-force.ts';
import { isCluster, isOver, nextSet } from './next-set.ts';
import { pairedNow, restInPair } from './pairs.ts';
import {
  amendSets,
  confirmSets,
  openSession,
  replaceLift,
  shortenDay,
  withSetDown,
} from './set-changes.ts';
import type { ExerciseState, LastDown, SessionState, Stage } from './state.ts';

/**
 * The state after one more event. An undo folds anew without the act it names.
 * @throws RangeError when there is no state and the event is not an opening.
 */
export function apply(state: SessionState | null, event: SessionEvent): SessionState {
  const events = state ? [...state.events, event] : [event];
  const next = event.type === 'undone' ? fold(events) : step(state, event);
  if (!next) throw new RangeError(`A session begins with its opening, not with ${event.type}.`);
  return { ...next, events, lastAt: event.at };
}

/** The state after all events in order; null where none of them opens a session. */
export function fold(events: readonly SessionEvent[]): SessionState | null {
  const last = events.at(-1);
  const state = inForce(events).reduce<SessionState | null>(step, null);
  return state && last ? { ...state, events, lastAt: last.at } : null;
}

function step(state: SessionState | null, event: SessionEvent): SessionState | null {
  if (!state) return event.type === 'session-opened' ? settle(openSession(event)) : null;
  return settle(changeBy(state, event));
}

type Changes = {
  readonly [Type in SessionEvent['type']]: (
    state: SessionState,
    event: Extract<SessionEvent, { type: Type }>,
  ) => SessionState;
};

/** What each fact changes. A fact is obeyed, never judged: rules and refusals are `decide`'s. */
const CHANGES: Changes = {
  'session-opened': (state) => state,
  'set-started': (state, { exercise, role, index, at }) => ({
    ...resumeAt(state, at),
    stage: { kind: 'lifting', set: { exercise, role, index }, since: at, pausedMs: 0 },
    current: exercise,
  }),
  'start-withdrawn': (state) => standing(state),
  'set-done': (state, event) => withSetDown(resumeAt(state, event.at), event),
  'set-amended': amendSets,
  'sets-confirmed': confirmSets,
  'set-skipped': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, skipped: each.skipped + 1 })),
  'warm-ups-skipped': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, warmUpsSkipped: true })),
  'exercise-skipped': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, leftOut: true })),
  'exercise-chosen': (state, { exercise }) => choose(standing(state), exercise),
  paired: (state, { exercises }) => ({
    ...state,
    pairs: pairedNow(state.pairs, exercises),
  }),
  'pair-parted': (state, { exercise }) => ({
    ...state,
    pairs: state.pairs
      .map((pair) => pair.filter((each) => each !== exercise))
      .filter(({ length }) => length > 1),
  }),
  'set-added': (state, { exercise }) => ({
    ...within(state, exercise, (each) => ({ ...each, added: each.added + 1, leftOut: false })),
    chosen: exercise,
  }),
  'day-shortened': shortenDay,
  'cluster-ended': (state, { exercise, reason }) =>
    within(standing(state), exercise, (each) => ({ ...each, clusterEnd: reason })),
  'cluster-resumed': (state, { exercise }) =>
    within(state, exercise, (each) => ({ ...each, clusterEnd: null })),
  'exercise-replaced': (state, { exercise, by }) =>
    within(standing(state), exercise, (each) => replaceLift(each, by)),
  'rest-changed': (state, { by }) =>
    state.lastDown
      ? { ...state, lastDown: { ...state.lastDown, changedBy: state.lastDown.changedBy + by } }
      : state,
  paused: (state, { at }) => pauseAt(state, at),
  resumed: (state, { at }) => resumeAt(state, at),
  'pain-marked': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, pain: true, leftOut: true })),
  'note-written': (state, { exercise, text }) =>
    exercise === null
      ? { ...state, notes: [...state.notes, text] }
      : within(state, exercise, (each) => ({ ...each, notes: [...each.notes, text] })),
  undone: (state) => state,
  'session-closed': (state, { how, at }) => ({
    ...resumeAt(state, at),
    stage: { kind: 'closed', how },
  }),
  'session-discarded': (state, { at }) => ({
    ...resumeAt(state, at),
    stage: { kind: 'closed', how: 'discarded' },
  }),
};

/** The state after one event in force; an event of a kind that is not known changes nothing. */
function changeBy(state: SessionState, event: SessionEvent): SessionState {
  // The table is keyed by the event's own type, which the compiler cannot follow.
  const change = CHANGES[event.type] as
    | ((state: SessionState, event: SessionEvent) => SessionState)
    | undefined;
  return change ? change(state, event) : state;
}

/** Nothing is being lifted: the stage follows from what is left to do. */
const standing = (state: SessionState): SessionState =>
  state.stage.kind === 'lifting' ? { ...state, stage: { kind: 'all-done' } } : state;

function within(
  state: SessionState,
  exercise: number,
  change: (each: ExerciseState) => ExerciseState,
): SessionState {
  const exercises = state.exercises.map((each, at) => (at === exercise ? change(each) : each));
  return { ...state, exercises };
}

/** A cluster that is left for another exercise is over: its short rests cannot be made up for. */
function choose(state: SessionState, chosen: number): SessionState {
  const exercises = state.exercises.map((each, at): ExerciseState => {
    if (at === chosen) return { ...each, leftOut: false };
    const left = isCluster(each) && each.done.length > 0 && !isOver(each);
    return left ? { ...each, clusterEnd: 'lifter' } : each;
  });
  return { ...state, exercises, chosen, goesFirst: chosen, current: chosen };
}

/** Rest after a warm-up set, in seconds (60 s: common practice; the late end is ours). */
export const WARM_UP_REST: Rest = { from: 60, to: 120 };

/** The state with its stage worked out again, after anything but its stage has changed. */
function settle(state: SessionState): SessionState {
  return { ...state, stage: stageOf(state) };
}

function stageOf(state: SessionState): Stage {
  const { stage, lastDown } = state;
  if (stage.kind === 'closed' || stage.kind === 'lifting') return stage;
  const next = nextSet(state);
  if (!next) return { kind: 'all-done' };
  if (!lastDown) return { kind: 'ready', next };
  const { at: since, pausedMs, changedBy } = lastDown;
  const rest = changed(restBefore(state, lastDown, next), changedBy);
  return { kind: 'resting', next, running: { since, rest, pausedMs } };
}

function restBefore(state: SessionState, last: LastDown, next: SetPlace): Rest {
  const { exercises, prescription } = state;
  const exercise = exercises[next.exercise];
  if (exercise && isFromPartner(state, last, next)) return restInPair(exercise, last);
  const same = last.place.exercise === next.exercise && last.track === exercise?.prescribed.track;
  if (!exercise || !same) return prescription.restBetween;
  return last.place.role === 'warm-up' ? WARM_UP_REST : exercise.prescribed.rest;
}

/** Between the lifts of a pair the way over is short, also from the warm-ups of one to those of the other. */
const isFromPartner = (state: SessionState, last: LastDown, next: SetPlace): boolean =>
  next.role !== 'mini' &&
  state.pairs.some((pair) => pair.includes(last.place.exercise) && pair.includes(next.exercise)) &&
  last.place.exercise !== next.exercise;

const changed = ({ from, to }: Rest, by: number): Rest => ({
  from: Math.max(0, from + by),
  to: Math.max(0, to + by),
});

const pauseAt = (state: SessionState, at: Reading): SessionState =>
  state.pausedSince ? state : { ...state, pausedSince: at };

/** Ends a pause where one runs: what runs beside it, a rest or a set, gets longer by it. */
function resumeAt(state: SessionState, at: Reading): SessionState {
  const { pausedSince, stage, lastDown } = state;
  if (!pausedSince) return state;
  const paused = elapsedMs(pausedSince, at);
  return {
    ...state,
    pausedSince: null,
    pausedMs: state.pausedMs + paused,
    stage: stage.kind === 'lifting' ? { ...stage, pausedMs: stage.pausedMs + paused } : stage,
    lastDown: lastDown && { ...lastDown, pausedMs: lastDown.pausedMs + paused },
  };
}
