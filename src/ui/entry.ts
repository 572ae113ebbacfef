import type { DoneExercise } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionCommand } from '../session/command.ts';
import type { SetNumbers } from '../session/events.ts';
import { worksOf } from '../session/next-set.ts';
import type { DoneSet, SessionState } from '../session/state.ts';
import { massNumber, massOf, readQuantity, type Unit } from '../training/mass.ts';
import type { Model } from './model.ts';
import { draftOf } from './outcome.ts';
import type { Phase } from './phase.ts';
import { plannedSet } from './set-plan.ts';
import type { Field, Typing } from './ui-state.ts';

/** The set whose numbers the keys change. */
export interface EntryTarget {
  /** Null: the set that is being lifted. */
  readonly of: DoneSet | null;
  readonly exercise: DoneExercise;
  readonly numbers: SetNumbers;
}

/** A work set that was put down, with the exercise as it was then. */
export interface PutDown {
  readonly set: DoneSet;
  readonly exercise: PrescribedExercise;
}

/** Work sets that were put down, oldest first, those of lifts given up for another too. */
export const setsPutDown = (session: SessionState): readonly PutDown[] =>
  session.exercises
    .flatMap(worksOf)
    .flatMap((work) => work.done.map((set) => ({ set, exercise: work.prescribed })))
    .toSorted((a, b) => placeIn(session, a.set.id) - placeIn(session, b.set.id));

/** Where an event stands among those of its session: a clock may have been set meanwhile. */
const placeIn = ({ loaded }: SessionState, id: string): number =>
  loaded.findIndex((each) => each.id === id);

/**
 * The set that is lifted while one is; else the one that the draft names, else the newest. Null
 * where there is none yet, and for warm-ups, which keep no numbers.
 */
export function entryTarget(
  session: SessionState,
  phase: Phase,
  draft: Typing | null,
): EntryTarget | null {
  const sets = setsPutDown(session);
  const named = draft?.of ? sets.find(({ set }) => set.id === draft.of) : undefined;
  if (!named && phase.kind === 'lifting') return liftedTarget(session, phase.set);
  const found = named ?? sets.at(-1);
  return found ? { of: found.set, exercise: found.exercise, numbers: found.set } : null;
}

function liftedTarget(
  session: SessionState,
  place: Extract<Phase, { kind: 'lifting' }>['set'],
): EntryTarget | null {
  const plan = plannedSet(session, place);
  const exercise = session.exercises[place.exercise];
  if (!plan || !exercise || plan.load === null || place.role === 'warm-up') return null;
  const reserve = plan.reserve?.[0] ?? null;
  return {
    of: null,
    exercise: exercise.prescribed,
    numbers: { load: plan.load, count: plan.count, reserve },
  };
}

/** Fields of a set, in the order in which keys go through them. */
export const fieldsOf = (exercise: DoneExercise): readonly Field[] =>
  exercise.counts === 'seconds' ? ['count', 'load'] : ['count', 'reserve', 'load'];

/** What a field shows: what was typed, else the set's number. */
export function fieldText(
  target: EntryTarget,
  draft: Typing | null,
  field: Field,
  unit: Unit,
): string {
  const typed = draft?.typed[field];
  if (typed !== undefined) return typed;
  if (field === 'load') return massNumber(target.numbers.load, unit);
  const number = target.numbers[field];
  return number === null ? '–' : String(number);
}

/** What was typed, as numbers; null where nothing was, and the sentence where a field cannot be read. */
export function draftNumbers(
  draft: Typing | null,
  unit: Unit,
): Partial<SetNumbers> | string | null {
  if (!draft) return null;
  const numbers: { load?: SetNumbers['load']; count?: number; reserve?: number } = {};
  for (const [field, text] of Object.entries(draft.typed) as [Field, string][]) {
    if (field === 'load') {
      const quantity = readQuantity(text, unit);
      if (!quantity) return `"${text}" is not a load; type a number such as 72.5.`;
      numbers.load = massOf(quantity);
    } else if (/^\d{1,3}$/.test(text)) {
      numbers[field] = Number(text);
    } else {
      return `"${text}" is not a number of ${field === 'count' ? 'reps' : 'reps in reserve'}.`;
    }
  }
  return Object.keys(numbers).length === 0 ? null : numbers;
}

/**
 * Amends the set that the draft names with what was typed; no command where nothing was, and the
 * sentence where it cannot be read.
 */
export function typedCommands(model: Model): readonly SessionCommand[] | string {
  const draft = draftOf(model);
  const numbers = draftNumbers(draft, model.session?.prescription.unit ?? 'kg');
  if (typeof numbers === 'string') return numbers;
  const of = draft?.of;
  return numbers && of ? [{ do: 'amend', of, numbers }] : [];
}
