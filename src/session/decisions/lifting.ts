import type { Reading } from '../../training/reading.ts';
import { aimOf, type SetAim } from '../aim.ts';
import type { SessionCommand } from '../command.ts';
import type { Decided } from '../decide.ts';
import { openSets, setsDone } from '../done-sets.ts';
import type { SetNumbers } from '../events.ts';
import { stageNow } from '../stage-now.ts';
import type { SessionState } from '../state.ts';
import { numbersProblem } from './check-numbers.ts';
import { accepted, refused } from './decided.ts';

type Command<Name extends SessionCommand['do']> = Extract<SessionCommand, { do: Name }>;

export function start({ stage }: SessionState): Decided {
  if (stage.kind === 'lifting') {
    return refused('A set is under way already.', 'Put it down, or take the start back.');
  }
  if (stage.kind === 'all-done' || stage.kind === 'closed') {
    return refused('Every set is done or left out.', 'Add a set, or choose an exercise.');
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
  const count = numbers.count ?? plannedCount(aim, now.holdLeftMs, now.liftedMs);
  const given: SetNumbers = { load, count, reserve: reserveFrom(numbers, aim) };
  const problem = numbersProblem(set.role, exercise.prescribed, given);
  if (problem) return { ok: false, problem };
  const typed = numbers.count !== undefined || numbers.reserve !== undefined;
  return accepted({ type: 'set-done', ...set, ...given, entered: typed ? 'typed' : 'as-planned' });
}

/** A hold put down before its time counts the seconds it was held. */
function plannedCount({ count }: SetAim, holdLeftMs: number | null, liftedMs: number): number {
  const cutShort = holdLeftMs !== null && holdLeftMs > 0;
  return cutShort ? Math.max(1, Math.floor(liftedMs / 1000)) : count;
}

/** Effort that was not given is the low end of what was asked. */
const reserveFrom = (numbers: Partial<SetNumbers>, aim: SetAim): number | null =>
  numbers.reserve === undefined ? (aim.reserve?.[0] ?? null) : numbers.reserve;

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
  const { load, count, reserve } = {
    load: set.load,
    count: set.count,
    reserve: set.reserve,
    ...numbers,
  };
  const problem = numbersProblem(set.role, prescriptionOf(exercise, set), { load, count, reserve });
  return problem ? { ok: false, problem } : accepted({ type: 'set-amended', of, ...numbers });
}

const prescriptionOf = (
  { prescribed, earlier }: SessionState['exercises'][number],
  { id }: { readonly id: string },
) => earlier.find(({ done }) => done.some((each) => each.id === id))?.prescribed ?? prescribed;

export function confirm(state: SessionState): Decided {
  const open = openSets(state);
  return open.length > 0
    ? accepted({ type: 'sets-confirmed', of: open.map(({ id }) => id) })
    : refused('No set waits to be confirmed.');
}
