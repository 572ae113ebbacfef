import type { Rest } from '../program/program.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { andText } from '../text/words.ts';
import { partnersIn, turnsOf } from '../training/pairing.ts';
import { elapsedMs, type Reading } from '../training/reading.ts';
import { PAIR_REST } from '../training/set-clock.ts';
import type { ExerciseState, LastDown, SessionState } from './state.ts';

/** Positions of the exercises whose sets alternate, as the program pairs them. */
export function pairedIn(exercises: readonly PrescribedExercise[]): SessionState['pairs'] {
  return turnsOf(exercises)
    .filter(({ length }) => length > 1)
    .map((turn) => turn.map((each) => exercises.indexOf(each)));
}

/** The pairs once these exercises make one; whoever was in another with them leaves it. */
export function pairedNow(
  pairs: SessionState['pairs'],
  exercises: readonly number[],
): SessionState['pairs'] {
  const left = pairs.map((pair) => pair.filter((each) => !exercises.includes(each)));
  return [...left, [...exercises]].filter(({ length }) => length > 1);
}

/**
 * The rest before a set that follows one of its partner, counted from that one: what is left of the
 * lift's own rest, and at least a breath.
 */
export function restInPair(exercise: ExerciseState, { at }: Pick<LastDown, 'at'>): Rest {
  const own = ownRestLeft(exercise, at);
  return own
    ? { from: Math.max(PAIR_REST.from, own.from), to: Math.max(PAIR_REST.to, own.to) }
    : PAIR_REST;
}

/** Seconds that are left of the lift's own rest since its own last set, below 0 once over; null before its first. */
export function ownRestLeft(exercise: ExerciseState, at: Reading): Rest | null {
  const last = exercise.done.at(-1)?.at;
  if (!last) return null;
  const passed = Math.round(elapsedMs(last, at) / 1000);
  const { from, to } = exercise.prescribed.rest;
  return { from: from - passed, to: to - passed };
}

/** `in turn with Pull-up`: whose sets alternate with those of an exercise; null where none do. */
export function inTurnWords(
  exercises: readonly PrescribedExercise[],
  exercise: PrescribedExercise,
): string | null {
  const partners = partnersIn(exercises, exercise);
  return partners.length > 0 ? `in turn with ${andText(partners.map(({ name }) => name))}` : null;
}
