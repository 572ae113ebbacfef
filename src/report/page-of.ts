import type { Review } from '../cut/review.ts';
import type { History } from '../journal/history.ts';
import { dayWords } from '../text/day-words.ts';
import { safeText } from '../text/safe-text.ts';
import { CAUTIONS } from '../training/cautions.ts';
import type { Unit } from '../training/mass.ts';
import type { PageView } from './page-view.ts';
import { pictureOfBody, whyNoBody } from './picture-of-body.ts';
import { pictureOfKept } from './picture-of-kept.ts';
import { pictureOfMuscles } from './picture-of-muscles.ts';
import { picturesOfLifts } from './pictures-of-lifts.ts';
import type { ReasonWords } from './reason-words.ts';
import { reviewFigures } from './review-words.ts';

/** Everything that the exported page shows, from a history and its review. */
export function pageOf(
  history: Pick<History, 'results' | 'sessions' | 'decisions' | 'weighIns' | 'bodyMassOn'>,
  review: Review,
  words: ReasonWords,
  unit: Unit,
): PageView {
  const { evidence, verdict, today } = review;
  const body = pictureOfBody(history, review, unit);
  return {
    program: safeText(evidence.program.name),
    made: dayWords(today),
    unit,
    headline: safeText(words(verdict.headline.reason).text),
    findings: verdict.below.map(({ reason }) => {
      const { text, source } = words(reason);
      return { text: safeText(text), source: safeText(source) };
    }),
    figures: reviewFigures(review, unit),
    body,
    noBody: body === null ? whyNoBody(history, review) : null,
    kept: pictureOfKept(history, review),
    lifts: picturesOfLifts(history, review, unit),
    muscles: pictureOfMuscles(review),
    caution: CAUTIONS[0] ?? '',
  };
}
