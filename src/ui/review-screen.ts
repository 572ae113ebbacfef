import type { Bench } from '../workbench/bench.ts';
import type { Screen } from './ui-state.ts';

/** The review as of now, the first advice that takes an answer chosen. */
export function reviewScreen({ watch }: Pick<Bench, 'watch'>): Screen {
  const page = watch.review();
  const chosen = page.advice.findIndex(({ mayRefuse }) => mayRefuse);
  return { kind: 'review', page, chosen: Math.max(0, chosen), scroll: 0 };
}
