import type { Coach } from '../lifter/coach.ts';
import type { Screen } from './ui-state.ts';

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
