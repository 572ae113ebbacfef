import type { Temporal } from 'temporal-polyfill';
import type { Kept, LiftKept } from '../cut/kept.ts';
import type { CutPlan } from '../cut/plan.ts';
import { type RateOfLoss, rateErrorText } from '../cut/rate-of-loss.ts';
import type { Review } from '../cut/review.ts';
import { dayAndMonth } from '../text/day-words.ts';
import { howMany } from '../text/words.ts';
import { type Length, type LengthUnit, lengthText, tapeOf } from '../training/length.ts';
import { type Mass, massNumber, massText, minus, type Unit } from '../training/mass.ts';

/** One of the few numbers that a review leads with. */
export interface Figure {
  readonly name: string;
  readonly value: string;
  readonly about: string;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** The numbers that a review leads with; those that are not known or not to be shown are left out. */
export function reviewFigures(review: Review, unit: Unit): Figure[] {
  const { evidence, body, weeks } = review;
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
    const about = change === null ? 'trend' : `trend; ${changeWords(change, unit)}`;
    figures.push({ name: 'Body weight', value: massText(now, unit, 1), about });
  }
  if (review.waist) figures.push(waistFigure(review.waist, tapeOf(unit)));
  if (evidence.rate) figures.push(rateFigure(evidence.rate.now, review.today));
  if (evidence.plan) figures.push(...goalFigures(evidence.plan, unit));
  return [...figures, sessionsFigure(weeks)];
}

/** `5.6 kg lost` */
function changeWords(lost: Mass, unit: Unit): string {
  const by = Math.abs(lost) as Mass;
  if (massNumber(by, unit, 1) === '0') return 'as at the start';
  return `${massText(by, unit, 1)} ${lost < 0 ? 'gained' : 'lost'}`;
}

/** `Waist  86 cm  3.5 cm less than on 7 Nov`. */
function waistFigure({ now, before }: NonNullable<Review['waist']>, tape: LengthUnit): Figure {
  const change = before === null ? 0 : now - before.length;
  const by = lengthText(Math.abs(change) as Length, tape);
  const about =
    before === null
      ? 'measured once'
      : change === 0
        ? `as on ${dayAndMonth(before.date)}`
        : `${by} ${change < 0 ? 'less' : 'more'} than on ${dayAndMonth(before.date)}`;
  return { name: 'Waist', value: lengthText(now, tape), about };
}

/** The present week counts as far as it has come: its sessions to come are not missed. */
function sessionsFigure(weeks: Review['weeks']): Figure {
  const now = weeks.at(-1);
  const isOpen = now !== undefined && now.sessions < now.planned;
  const full = isOpen ? weeks.slice(0, -1) : weeks;
  const sum = (of: 'sessions' | 'planned') => full.reduce((all, week) => all + week[of], 0);
  const soFar = isOpen ? `${now.sessions} of ${now.planned}` : '';
  if (full.length === 0) return { name: 'Sessions', value: soFar, about: 'this week so far' };
  const count = full.length === 1 ? '1 full week' : `${full.length} full weeks`;
  return {
    name: 'Sessions',
    value: `${sum('sessions')} of ${sum('planned')}`,
    about: isOpen ? `in ${count}; this week so far ${soFar}` : `in ${count}`,
  };
}

/** `Goal  75 kg  between 12 Jan and 3 Mar 2027`. */
export function goalFigures(
  { goal, reached, onDate, rates, measured }: CutPlan,
  unit: Unit,
): Figure[] {
  const [slow, fast] = rates.map((rate) => rate.toFixed(1));
  const at = `${slow}–${fast} % a week${measured ? '' : ', as planned'}`;
  const figures: Figure[] = [];
  if (goal.mass !== null && reached) {
    const { early, late, breaks } = reached;
    const when = late
      ? `${dayAndYear(early)} to ${dayAndYear(late)}`
      : `${dayAndYear(early)} or later`;
    const pauses = breaks === 0 ? '' : `, ${howMany(breaks, 'pause')} with it`;
    figures.push({
      name: `Goal ${massText(goal.mass, unit, 1)}`,
      value: when,
      about: `at ${at}${pauses}`,
    });
  }
  if (goal.date !== null && onDate) {
    const [low, high] = [onDate.low, onDate.high].map((mass) =>
      massNumber(Math.round(mass) as Mass, unit, 1),
    );
    figures.push({
      name: `Goal ${dayAndMonth(goal.date)}`,
      value: `${low}–${high} ${unit}`,
      about: `at ${at}`,
    });
  }
  return figures;
}

const dayAndYear = (date: Temporal.PlainDate): string => `${dayAndMonth(date)} ${date.year}`;

function rateFigure(rate: RateOfLoss, today: Temporal.PlainDate): Figure {
  const name = 'Rate of loss';
  if (rate.kind === 'unknown') {
    return {
      name,
      value: 'not yet',
      about: `from ${rate.earliest.year === today.year ? dayAndMonth(rate.earliest) : dayAndYear(rate.earliest)} on, with 7 weigh-ins`,
    };
  }
  return {
    // What is shown as 0.0 is no gain.
    name: rate.percentAWeek <= -0.05 ? 'Rate of gain' : name,
    // With its error and its unit: a narrow screen shows the value alone.
    value: `${Math.abs(rate.percentAWeek).toFixed(1)} % a week ± ${rateErrorText(rate.standardError)}`,
    about: `${rate.weighIns} days weighed since ${dayAndMonth(rate.from)}`,
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
