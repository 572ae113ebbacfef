import type { Coach } from '../lifter/coach.ts';
import type { ResultsScreen, Screen } from './ui-state.ts';

/** Where a change leads to: another screen, or the same one as of now. */
export type Destination = 'preview' | 'review' | 'readings' | 'here';

/** Another screen after a change, read anew from what is recorded now. */
export function screenAfter(to: Exclude<Destination, 'here'>, coach: Coach): Screen {
  switch (to) {
    case 'preview':
      return { kind: 'preview', today: coach.today(), chosen: 0 };
    case 'review':
      return reviewScreen(coach);
    case 'readings':
      return readingsScreen(coach);
  }
}

/** All weigh-ins, as they are now. */
export function readingsScreen(coach: Coach, chosen = 0): Extract<Screen, { kind: 'readings' }> {
  const readings = coach.lookBack.readings();
  const last = Math.max(0, readings.length - 1);
  return { kind: 'readings', readings, chosen: Math.min(chosen, last) };
}

/** The results of a lift as they are now, or all lifts once it has none any more. */
export function resultsAnew(before: ResultsScreen, coach: Coach): Screen {
  const { lift, query } = before;
  const results = coach.lookBack.results(lift, query);
  if (results.length > 0) {
    const strength = coach.lookBack.strength(lift);
    return { ...before, results, strength, chosen: Math.min(before.chosen, results.length - 1) };
  }
  return { kind: 'lifts', lifts: coach.lookBack.lifts(query), query, chosen: 0 };
}

/** What is due, past the question that a cut needs where it was not answered. */
export function beforeTraining(coach: Coach): Screen {
  const today = coach.today();
  return today.prescription.warnings.some(({ rule }) => rule === 'cut-not-answered')
    ? { kind: 'weight-question', to: 'preview', scroll: 0 }
    : { kind: 'preview', today, chosen: 0 };
}

/** The review as of now, the first advice that takes an answer chosen. */
export function reviewScreen({ lookBack }: Pick<Coach, 'lookBack'>): Screen {
  const page = lookBack.review();
  const chosen = page.advice.findIndex(({ mayTake, mayRefuse }) => mayTake || mayRefuse);
  return { kind: 'review', page, chosen: Math.max(0, chosen), sources: false, scroll: 0 };
}
