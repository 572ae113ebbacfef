import type { PrescribedExercise } from '../../progression/prescription.ts';
import type { Problem } from '../../text/problem.ts';
import { kilograms, massText } from '../../training/mass.ts';
import type { Reading } from '../../training/reading.ts';
import { aimOf } from '../aim.ts';
import type { SessionCommand } from '../command.ts';
import type { SetNumbers } from '../events.ts';
import { openSets, setsDone } from '../next-set.ts';
import { stageNow, untilMeant } from '../stage-now.ts';
import type { SessionState } from '../state.ts';
import { accepted, type Decided, refused } from './decided.ts';

type Command<Name extends SessionCommand['do']> = Extract<SessionCommand, { do: Name }>;

export function start({ stage, lastDown }: SessionState, _: unknown, at: Reading): Decided {
  if (stage.kind === 'lifting') {
    return refused('A set is under way already.', 'Put it down, or take the start back.');
  }
  if (stage.kind === 'all-done' || stage.kind === 'closed') {
    return refused('Every set is done or left out.', 'Add a set, or choose an exercise.');
  }
  if (lastDown && untilMeant(lastDown.at, at) > 0) {
    return refused('The set was put down just now.', 'Take a breath; then space starts the next.');
  }
  return accepted({ type: 'set-started', ...stage.next });
}

/** Saves the set at once: as planned, or with the numbers given. */
export function putDown(
  state: SessionState,
  { numbers = {} }: Command<'put-down'>,
  at: Reading,
): Decided {
  const now = stageNow(state, at);
  if (now.kind !== 'lifting') return refused('No set is under way.', 'Start the set first.');
  if (untilMeant(now.since, at) > 0) {
    return refused('No set is over so soon.', 'Lift; then space puts it down.');
  }
  const { set } = now;
  const aim = aimOf(state, set);
  const exercise = state.exercises[set.exercise];
  if (!aim || !exercise) return refused('The set is not part of this session.');
  const { load = aim.load } = numbers;
  if (load === null) {
    return refused(
      `No load is known yet for ${exercise.prescribed.name}.`,
      'Type the load that was lifted.',
    );
  }
  const held = now.sideLeftMs === null ? now.liftedMs : now.liftedMs / 2;
  const count = numbers.count ?? (now.holdLeftMs === null ? aim.count : secondsOf(held));
  // Effort that nobody told stays untold; what judges it reads the plan.
  const given: SetNumbers = {
    load,
    count,
    reserve: numbers.reserve ?? null,
    ...(numbers.failed && { failed: true }),
  };
  const problem = numbersProblem(exercise.prescribed, given);
  if (problem) return { ok: false, problem };
  const typed = numbers.count !== undefined || numbers.reserve !== undefined;
  return accepted({ type: 'set-done', ...set, ...given, entered: typed ? 'typed' : 'as-planned' });
}

/** A hold counts the whole seconds that the screen showed, of two sides half of them. */
const secondsOf = (liftedMs: number): number => Math.floor(liftedMs / 1000);

export function withdrawStart({ stage }: SessionState): Decided {
  return stage.kind === 'lifting'
    ? accepted({ type: 'start-withdrawn' })
    : refused('No set was started by hand.', 'Make the rest longer to begin later.');
}

export function amend(state: SessionState, { of, numbers }: Command<'amend'>): Decided {
  const set = setsDone(state).find(({ id }) => id === of);
  const exercise = set && state.exercises[set.exercise];
  if (!set || !exercise) {
    return refused('There is no such set to correct.', 'Warm-up sets keep no numbers.');
  }
  const { load, count, reserve } = set;
  const problem = numbersProblem(prescriptionOf(exercise, set), {
    load,
    count,
    reserve,
    ...numbers,
  });
  return problem ? { ok: false, problem } : accepted({ type: 'set-amended', of, ...numbers });
}

const prescriptionOf = (
  { prescribed, earlier }: SessionState['exercises'][number],
  { id }: { readonly id: string },
) => earlier.find(({ done }) => done.some((each) => each.id === id))?.prescribed ?? prescribed;

export function confirm(state: SessionState, _: unknown, at: Reading): Decided {
  if (isOverSoon(state, at)) return refused(...JUST_DONE);
  const open = openSets(state);
  return open.length > 0
    ? accepted({ type: 'sets-confirmed', of: open.map(({ id }) => id) })
    : refused('No set waits to be confirmed.');
}

const JUST_DONE = [
  'The last set was put down just now.',
  'Look at the numbers; then space says that they are right.',
] as const;

/** Is the session done only since the key that put the last set down? */
const isOverSoon = ({ stage, lastDown }: SessionState, at: Reading): boolean =>
  stage.kind === 'all-done' && lastDown !== null && untilMeant(lastDown.at, at) > 0;

export function close(state: SessionState, { how }: Command<'close'>, at: Reading): Decided {
  if (isOverSoon(state, at)) return refused(...JUST_DONE);
  return how === 'finished' && state.stage.kind !== 'all-done'
    ? refused('Some sets are neither done nor left out.', 'Close the session as it is.')
    : accepted({ type: 'session-closed', how });
}

/** More than these are a slip of the fingers. Ours. */
export const MOST = { reps: 60, seconds: 900, reserve: 10, load: kilograms(1000) } as const;

const TYPE_ANEW = 'Type another over it, or rub it out.';

/** What is wrong with the numbers of a set, or null. */
function numbersProblem(
  exercise: PrescribedExercise,
  { load, count, reserve, failed }: SetNumbers,
): Problem | null {
  const { counts, basis, loading } = exercise;
  if (failed && counts === 'seconds') return { what: 'A hold has no reps.' };
  // A set that was tried and did not come up has no reps: a miss, and worth knowing.
  if (!Number.isInteger(count) || count < 0 || count > MOST[counts]) {
    return {
      what: `A set cannot have ${count} ${counts}: expected a whole number from 0 to ${MOST[counts]}.`,
      fix: TYPE_ANEW,
    };
  }
  if (reserve !== null && (!Number.isInteger(reserve) || reserve < 0 || reserve > MOST.reserve)) {
    return {
      what: `${reserve} is no number of reps in reserve: expected a whole number from 0 to ${MOST.reserve}.`,
      fix: TYPE_ANEW,
    };
  }
  if (count === 0 && reserve !== null && reserve > 0) {
    return {
      what: `A set of no reps has none in reserve, so not ${reserve}.`,
      fix: 'Type the reps that went up, or 0 in reserve.',
    };
  }
  if (load === 0 && (loading === 'barbell' || loading === 'dumbbell')) {
    return {
      what: `${exercise.name} at 0: even an empty ${loading === 'barbell' ? 'bar' : 'dumbbell'} weighs something.`,
      fix: `Type the whole load, ${loading === 'barbell' ? 'the bar with it' : 'that of one hand'}.`,
    };
  }
  const lightest = basis === 'added' ? -MOST.load : 0;
  if (!Number.isSafeInteger(load) || load < lightest || load > MOST.load) {
    return {
      what: `The load of ${exercise.name} cannot be so.`,
      fix: `Type a load from ${lightest === 0 ? '0' : massText(-MOST.load as typeof load, 'kg')} to ${massText(MOST.load, 'kg')}.`,
    };
  }
  return null;
}
