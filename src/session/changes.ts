import type { SessionEvent } from './events.ts';
import { isCluster, isOver } from './next-set.ts';
import { pauseAt, resumeAt } from './pausing.ts';
import { replaceLift } from './replace-lift.ts';
import { amendSets, confirmSets, putDown } from './set-changes.ts';
import type { ExerciseState, SessionState } from './state.ts';

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
  'set-done': (state, event) => putDown(resumeAt(state, event.at), event),
  'set-amended': amendSets,
  'sets-confirmed': confirmSets,
  'set-skipped': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, skipped: each.skipped + 1 })),
  'warm-ups-skipped': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, warmUpsSkipped: true })),
  'exercise-skipped': (state, { exercise }) =>
    within(standing(state), exercise, (each) => ({ ...each, leftOut: true })),
  'exercise-chosen': (state, { exercise }) => choose(standing(state), exercise),
  'set-added': (state, { exercise }) => ({
    ...within(state, exercise, (each) => ({ ...each, added: each.added + 1, leftOut: false })),
    chosen: exercise,
  }),
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
export function changeBy(state: SessionState, event: SessionEvent): SessionState {
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
  return { ...state, exercises, chosen, current: chosen };
}
