import type { Bench } from '../workbench/bench.ts';
import type { Screen } from './ui-state.ts';

/** What is due, past the question that a cut needs where it was not answered. */
export function beforeTraining(bench: Bench): Screen {
  const today = bench.today();
  return today.prescription.warnings.some(({ rule }) => rule === 'cut-not-answered')
    ? { kind: 'weight-question', to: 'preview', scroll: 0 }
    : { kind: 'preview', today, chosen: 0 };
}

/** The review as of now, the first advice that takes an answer chosen. */
export function reviewScreen({ watch }: Pick<Bench, 'watch'>): Screen {
  const page = watch.review();
  const chosen = page.advice.findIndex(({ mayTake, mayRefuse }) => mayTake || mayRefuse);
  return { kind: 'review', page, chosen: Math.max(0, chosen), sources: false, scroll: 0 };
}
