import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import { TELLING_LOSS } from '../progression/holding.ts';
import type { Past } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { because } from '../progression/rules/progression-rules.ts';
import { once } from '../text/once.ts';
import { dayNumber } from '../training/day-number.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { cutStart, startMass } from './cut-start.ts';
import { keptByLift } from './kept.ts';

/**
 * The same exercises; where one holds in a cut, with what the review tells of its lift in numbers:
 * body weight lost, and strength by body weight then and now. Of compound lifts alone, and where
 * that strength is no less than it was.
 */
export function heldInNumbers(
  exercises: readonly PrescribedExercise[],
  program: Pick<Program, 'aim' | 'cutFrom'>,
  past: Past,
  today: Temporal.PlainDate,
): readonly PrescribedExercise[] {
  const from = cutStart(program, past.sessions, today);
  const now = past.bodyMassOn(today);
  if (!from || now === null) return exercises;
  const lifts = once(() => keptByLift(past, from, today));
  return exercises.map((exercise) => {
    if (exercise.kind !== 'compound' || !exercise.why.some(isHeld)) return exercise;
    const kept = lifts().find(({ lift }) => lift === exercise.lift);
    const then = massThen(past, exercise.lift, from);
    if (kept?.state !== 'known' || then === null || then - now < TELLING_LOSS) return exercise;
    const facts = { lost: then - now, before: kept.then / then, now: kept.now / now };
    if (facts.now < facts.before) return exercise;
    return {
      ...exercise,
      why: exercise.why.map((reason) => (isHeld(reason) ? because('holding-wins', facts) : reason)),
    };
  });
}

const isHeld = ({ rule }: { readonly rule: string }): boolean => rule === 'holding-wins';

/** Body mass at the start of the cut; where the lift was begun later, on that day. */
function massThen({ results, bodyMassOn }: Past, lift: string, from: Temporal.PlainDate) {
  const begun = results.find(
    ({ exercise, date }) => exercise.lift === lift && dayNumber(date) >= dayNumber(from),
  )?.date;
  return begun && dayNumber(begun) > dayNumber(from) + CUT_LIMITS.waterDays
    ? bodyMassOn(begun)
    : startMass(from, bodyMassOn);
}
