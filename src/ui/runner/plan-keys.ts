import type { PrescribedExercise } from '../../progression/prescription.ts';
import { presentLoad } from '../../session/aim.ts';
import { plannedSets } from '../../session/next-set.ts';
import type { ExerciseState } from '../../session/state.ts';
import { type Acting, type Outcome, RUNNER, type Seen, show, tell } from '../outcome.ts';
import { placeOf } from '../phase.ts';
import type { KeyRow } from '../screen.ts';
import { askLessTime } from '../screens/less-time.ts';
import { accepts, gearLackText, lacksGear, NO_EXERCISE } from './conditions.ts';

const hereOf = ({ phase, model }: Seen): number | null =>
  (phase && placeOf(phase)?.exercise) ?? model.session?.current ?? null;

/** What hurts is what was just lifted: until a set of the next lift is begun, that is the one before. */
const liftedOf = (seen: Seen): number | null => {
  const { phase, model } = seen;
  if (phase?.kind === 'lifting') return phase.set.exercise;
  const { current = null, exercises = [] } = model.session ?? {};
  const state = current === null ? null : exercises[current];
  return state && !(state.pain && state.leftOut) ? current : hereOf(seen);
};

const onExercise =
  (act: (exercise: number, acting: Acting) => Outcome, whichOf = hereOf) =>
  (acting: Acting): Outcome => {
    const which = whichOf(acting);
    return which === null ? tell(acting, NO_EXERCISE) : act(which, acting);
  };

const inSession = ({ model }: Seen): true | string =>
  model.session ? true : 'No session is open.';

const why = onExercise((exercise, acting) => {
  const { session } = acting.model;
  const state = session?.exercises[exercise];
  if (!session || !state) return tell(acting, NO_EXERCISE);
  const { unit, short } = session.prescription;
  return show(acting, {
    kind: 'why',
    exercises: [asItIsNow(state)],
    unit,
    cut: short?.cut ?? [],
    about: [],
    back: RUNNER,
    scroll: 0,
  });
});

/** The load of the set put down last, as many sets as are asked for by now, no warm-up that is over. */
function asItIsNow(state: ExerciseState): PrescribedExercise {
  const { prescribed, done, skipped, warmUpsDone, warmUpsSkipped } = state;
  const { warmUp, sets, minis } = prescribed;
  const isWarm = warmUpsSkipped || done.length + skipped > 0;
  const last = sets.at(-1);
  const asked = minis || !last ? sets.length : plannedSets(state);
  return {
    ...prescribed,
    load: presentLoad(state),
    sets: last ? Array.from({ length: asked }, (_, at) => sets[at] ?? last) : sets,
    warmUp: isWarm ? [] : warmUp.slice(warmUpsDone),
  };
}

/** What is asked about the exercise of now. */
export const EXERCISE_KEYS: readonly KeyRow[] = [
  {
    keys: ['c'],
    label: 'change the load',
    when: (seen) => {
      const place = seen.phase && placeOf(seen.phase);
      const state = place && seen.model.session?.exercises[place.exercise];
      if (!state) return NO_EXERCISE;
      const { prescribed: by } = state;
      if (lacksGear(state)) return gearLackText(by.name);
      const { exercise } = place;
      return accepts(seen, { do: 'replace', exercise, by, because: 'other-load' });
    },
    footer: 9,
    press: onExercise((exercise, acting) =>
      show(acting, { kind: 'load', exercise, purpose: 'change', typed: '' }),
    ),
  },
  {
    keys: ['m'],
    label: 'mark pain, note',
    when: (seen) => (liftedOf(seen) === null ? NO_EXERCISE : true),
    footer: 9,
    press: onExercise(
      (exercise, acting) => show(acting, { kind: 'pain', exercise, moment: 'now', chosen: 0 }),
      liftedOf,
    ),
  },
  { keys: ['w'], label: 'why this', footer: 2, press: why },
];

/** The session as a whole. */
export const SESSION_KEYS: readonly KeyRow[] = [
  {
    keys: ['x'],
    label: 'all exercises',
    when: inSession,
    footer: 9,
    press: (acting) => show(acting, { kind: 'exercises', chosen: hereOf(acting) ?? 0 }),
  },
  {
    keys: ['k'],
    label: 'less time',
    when: ({ phase }) => {
      if (phase?.kind === 'lifting') return 'Put the set down first.';
      return phase && placeOf(phase) ? true : NO_EXERCISE;
    },
    footer: 11,
    press: askLessTime,
  },
  {
    keys: ['f'],
    label: 'finish early',
    when: ({ phase }) => (phase?.kind === 'lifting' ? 'Put the set down first.' : true),
    footer: 12,
    press: (acting) => show(acting, { kind: 'finish', chosen: 0 }),
  },
];
