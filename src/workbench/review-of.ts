import { type Review, review } from '../cut/review.ts';
import type { Workbench } from './open-workbench.ts';

/** The review of the last `weeks` calendar weeks; weight is spoken of only to who asked for it. */
export function reviewOf(
  workbench: Workbench,
  weeks: number,
  { weightAdvice } = workbench.settings().settings,
): Review {
  const history = workbench.journal().history();
  return review(
    {
      program: workbench.program(),
      past: history,
      weighIns: history.weighIns,
      today: workbench.today(),
      weightAdvice: weightAdvice === 'yes',
    },
    weeks,
  );
}
