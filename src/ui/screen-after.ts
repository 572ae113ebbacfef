import type { Coach } from '../lifter/coach.ts';
import type { Screen } from './ui-state.ts';

/** Where a change of the past leads to. */
export type Destination = 'preview' | 'review' | 'results' | 'readings' | 'here';

/** The screen after a change, read anew from what is recorded now. */
export function screenAfter(to: Destination, screen: Screen, coach: Coach): Screen {
  switch (to) {
    case 'preview':
      return { kind: 'preview', today: coach.today(), chosen: 0 };
    case 'review':
      return reviewScreen(coach);
    case 'results':
      return resultsAnew(screen, coach);
    case 'readings':
      return readingsScreen(coach);
    case 'here':
      return hereAnew(screen, coach);
  }
}

/** All weigh-ins, as they are now. */
export function readingsScreen(coach: Coach, chosen = 0): Extract<Screen, { kind: 'readings' }> {
  const readings = coach.lookBack.readings();
  const last = Math.max(0, readings.length - 1);
  return { kind: 'readings', readings, chosen: Math.min(chosen, last) };
}

function hereAnew(screen: Screen, coach: Coach): Screen {
  switch (screen.kind) {
    case 'preview':
      return screenAfter('preview', screen, coach);
    case 'weigh':
      return { ...screen, weighing: coach.lookBack.weighing(screen.weighing.instead) };
    case 'week':
      return { ...screen, ...coach.lookBack.week() };
    case 'hurts':
      return { ...screen, hurts: coach.lookBack.hurts() };
    case 'readings':
      return readingsScreen(coach, screen.chosen);
    case 'lifts':
      return { ...screen, lifts: coach.lookBack.lifts(screen.query) };
    default:
      return resultsAnew(screen, coach);
  }
}

/** From a screen behind the results of a lift: those again, or all lifts once it has no more. */
function resultsAnew(screen: Screen, coach: Coach): Screen {
  const before = resultsBefore(screen);
  if (!before) return screen;
  const { lift, query } = before;
  const results = coach.lookBack.results(lift, query);
  if (results.length > 0) {
    const strength = coach.lookBack.strength(lift);
    return { ...before, results, strength, chosen: Math.min(before.chosen, results.length - 1) };
  }
  return { kind: 'lifts', lifts: coach.lookBack.lifts(query), query, chosen: 0 };
}

function resultsBefore(screen: Screen) {
  switch (screen.kind) {
    case 'results':
      return screen;
    case 'past-session':
      return screen.back;
    case 'correct':
    case 'delete':
      return screen.back.back;
    default:
      return null;
  }
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
