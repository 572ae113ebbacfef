import type { Kept, LiftKept } from '../cut/kept.ts';
import type { RateOfLoss } from '../cut/rate-of-loss.ts';
import type { Review } from '../cut/review.ts';
import { dayAndMonth } from '../text/day-words.ts';
import { massText, minus, type Unit } from '../training/mass.ts';

/** One of the few numbers that a review leads with. */
export interface Figure {
  readonly name: string;
  readonly value: string;
  readonly about: string;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** The numbers that a review leads with; those that are not known or not to be shown are left out. */
export function reviewFigures(review: Review, unit: Unit): Figure[] {
  const { evidence, body, weeks, planned } = review;
  const figures: Figure[] = [];
  if (evidence.kept !== null) {
    const compounds = evidence.lifts.filter(
      ({ kind, state }) => kind === 'compound' && state === 'known',
    ).length;
    const about =
      compounds === 1 ? 'of one compound lift' : `of ${compounds} compound lifts together`;
    figures.push({ name: 'Strength kept', value: intervalWords(evidence.kept), about });
  }
  if (body) {
    const { now, atStart } = body;
    const change = atStart === null ? null : minus(atStart, now);
    const about =
      change === null
        ? 'trend'
        : `trend; ${massText(Math.abs(change) as typeof change, unit, 1)} ${change < 0 ? 'gained' : 'lost'}`;
    figures.push({ name: 'Body weight', value: massText(now, unit, 1), about });
  }
  if (evidence.rate) figures.push(rateFigure(evidence.rate.now));
  const done = weeks.reduce((sum, { sessions }) => sum + sessions, 0);
  figures.push({
    name: 'Sessions',
    value: `${done} of ${planned * weeks.length}`,
    about:
      weeks.length === 1 ? 'done and planned this week' : `done and planned, ${weeks.length} weeks`,
  });
  return figures;
}

function rateFigure(rate: RateOfLoss): Figure {
  const name = 'Rate of loss';
  if (rate.kind === 'unknown') {
    return {
      name,
      value: 'not yet',
      about: `from ${dayAndMonth(rate.earliest)} on, with 7 weigh-ins`,
    };
  }
  return {
    name,
    value: `${rate.percentAWeek.toFixed(1)} %`,
    about: `a week, ± ${rate.standardError.toFixed(1)}; ${rate.weighIns} days weighed since ${dayAndMonth(rate.from)}`,
  };
}

/** `98 % (96–100)`: the likeliest share and the ends of its 90 % interval. */
const intervalWords = ({ share, low, high }: Kept): string =>
  `${percent(share)} (${Math.round(low * 100)}–${Math.round(high * 100)})`;

/** `98 % (96–100)`, or why it is not told. */
export function keptWords(lift: LiftKept, weightAdvice: boolean): string {
  if (lift.state === 'known') return intervalWords(lift);
  return lift.state === 'not-yet' || !weightAdvice ? 'not yet' : 'weigh in once';
}
