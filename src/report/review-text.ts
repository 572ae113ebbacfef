import type { Temporal } from 'temporal-polyfill';
import { CUT_LIMITS } from '../cut/cut-limits.ts';
import type { ReviewFinding } from '../cut/finding.ts';
import type { Kept, LiftKept } from '../cut/kept.ts';
import type { CutPlan } from '../cut/plan.ts';
import { type RateOfLoss, rateErrorText } from '../cut/rate-of-loss.ts';
import type { Review } from '../cut/review.ts';
import { muscleWords } from '../cut/verdict-words.ts';
import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { cutTo, wrapped } from '../text/columns.ts';
import { dayAndMonth, dayWords } from '../text/day-words.ts';
import { safeText } from '../text/safe-text.ts';
import { type Length, type LengthUnit, lengthText, tapeOf } from '../training/length.ts';
import { type Mass, massNumber, massText, minus, type Unit } from '../training/mass.ts';
import type { ReasonWords } from '../training/rule.ts';
import { barRows } from './bar-rows.ts';
import { closingLines } from './closing-lines.ts';
import type { Glyphs } from './plot.ts';
import { type Column, textTable } from './table.ts';

export interface TextSize {
  readonly width: number;
  readonly glyphs: Glyphs;
  /** Where each sentence comes from, below it. */
  readonly sources?: boolean;
}

/** The weekly review in lines of at most `width` columns. */
export function reviewText(
  review: Review,
  words: ReasonWords,
  unit: Unit,
  { width, glyphs, sources = false }: TextSize,
): string[] {
  const { verdict, today } = review;
  const said = (finding: ReviewFinding, mark: '' | '- ') => {
    const { text, source } = findingWords(finding, words);
    const indent = ' '.repeat(mark.length);
    return [
      '',
      ...wrapped(`${mark}${safeText(text)}`, width, indent),
      ...(sources ? wrapped(`${indent}(${safeText(source)})`, width, indent) : []),
    ];
  };
  const lines = [
    ...wrapped(safeText(`${reviewTitle(review)} · ${dayWords(today)}`), width),
    ...said(verdict.headline, ''),
    ...verdict.below.flatMap((each) => said(each, '- ')),
    ...reviewSections(review, unit, { width, glyphs }).flatMap(({ title, lines }) => [
      '',
      ...(title === null ? [] : [title]),
      ...lines,
    ]),
  ];
  return lines.map((line) => cutTo(line, width));
}

/** A finding in words, with what the lifter said to it. */
export function findingWords({ reason, answered }: ReviewFinding, words: ReasonWords) {
  const { text, source } = words(reason);
  return { text: answered ? `${text} You said ${answered} to it.` : text, source };
}

/** What is reviewed, and that it is a review. */
export const reviewTitle = ({ evidence }: Review): string =>
  `Weekly review · ${evidence.program.name}`;

export interface ReviewSection {
  /** Null for the figures, which need none. */
  readonly title: string | null;
  readonly lines: readonly string[];
}

/** What the verdict rests on, in lines of at most `width` columns; sections with nothing to say are left out. */
export function reviewSections(
  review: Review,
  unit: Unit,
  { width, glyphs }: TextSize,
): ReviewSection[] {
  const { evidence } = review;
  const sections: readonly ReviewSection[] = [
    { title: null, lines: figureLines(review, unit, width) },
    { title: 'The cut from its beginning', lines: closingLines(review, unit, width) },
    { title: 'Strength of each lift', lines: liftLines(review, unit, width) },
    {
      title: evidence.work.fullOn
        ? 'Hard sets a week (the last 14 days)'
        : 'Hard sets a week (two full weeks)',
      lines: barLines(review, width, glyphs),
    },
    { title: 'Week by week, Monday to Sunday', lines: weekLines(review, width) },
    { title: 'Hard sets of each muscle by week', lines: muscleLines(review, width) },
  ];
  return sections.flatMap(({ title, lines }) =>
    lines.length === 0 ? [] : [{ title, lines: lines.map((line) => cutTo(line, width)) }],
  );
}

function figureLines(review: Review, unit: Unit, width: number): string[] {
  const columns: readonly Column[] = [
    { heading: 'figure', align: 'left' },
    { heading: '', align: 'right' },
    { heading: '', align: 'left', dropFirst: 1 },
  ];
  const rows = reviewFigures(review, unit).map(({ name, value, about }) => [name, value, about]);
  return textTable(columns, rows, width).slice(1);
}

function liftLines({ evidence, body }: Review, unit: Unit, width: number): string[] {
  if (evidence.lifts.length === 0) return [];
  const slipping = new Set(
    evidence.exercises.filter(({ slip }) => slip).map(({ exercise }) => exercise.lift.key),
  );
  const columns: readonly Column[] = [
    { heading: 'lift', align: 'left' },
    { heading: 'kept', align: 'right' },
    { heading: 'e1RM', align: 'right', dropFirst: 1 },
    ...(body ? [{ heading: '× body weight', align: 'right', dropFirst: 2 } as const] : []),
    { heading: '', align: 'left' },
  ];
  const rows = evidence.lifts.map((lift) => [
    safeText(lift.name),
    keptWords(lift, evidence.weightAdvice),
    lift.state === 'known' ? massText(Math.round(lift.now) as Mass, unit, 1) : '',
    ...(body ? [bodyMassesText(lift)] : []),
    slipping.has(lift.lift) ? 'slipping' : '',
  ]);
  return textTable(columns, rows, width);
}

/** Of compound lifts alone: a side raise is not measured by the body. */
function bodyMassesText(lift: LiftKept): string {
  const told = lift.kind === 'compound' && lift.state === 'known' ? lift.perBodyMass : null;
  return told === null ? '' : told.toFixed(2);
}

function barLines({ evidence, muscles }: Review, width: number, glyphs: Glyphs): string[] {
  const { hardSets } = evidence.work;
  const bars = muscles.map((muscle) => {
    const value = ((hardSets.get(muscle) ?? 0) * 7) / CUT_LIMITS.workDays;
    return { label: muscleWords(muscle), value, text: sets(value) };
  });
  return barRows(bars, CHECK_LIMITS.weeklySets[evidence.program.aim], width, glyphs);
}

function weekLines({ weeks }: Review, width: number): string[] {
  const columns: readonly Column[] = [
    { heading: 'week from', align: 'left' },
    { heading: 'sessions', align: 'right' },
    { heading: 'in reserve', align: 'right' },
    { heading: 'hard reps', align: 'right', dropFirst: 1 },
    { heading: '', align: 'left', dropFirst: 2 },
  ];
  const rows = weeks.map((week) => [
    dayAndMonth(week.from),
    `${week.sessions} of ${week.planned}`,
    week.meanReserve?.toFixed(1) ?? '',
    week.clusterReps > 0 ? String(week.clusterReps) : '',
    week.lighter ? 'lighter' : '',
  ]);
  return textTable(columns, rows, width);
}

/** Newest weeks stay where the width does not do for all. */
function muscleLines({ weeks, muscles }: Review, width: number): string[] {
  if (muscles.length === 0) return [];
  const columns: readonly Column[] = [
    { heading: 'muscle', align: 'left' },
    ...weeks.map((week, at) => ({
      heading: dayAndMonth(week.from),
      align: 'right' as const,
      ...(at < weeks.length - 1 ? { dropFirst: weeks.length - at } : {}),
    })),
    { heading: 'days', align: 'right' },
  ];
  const last = weeks.at(-1);
  const rows = muscles.map((muscle) => [
    muscleWords(muscle),
    ...weeks.map(({ hardSets }) => sets(hardSets.get(muscle) ?? 0)),
    String(last?.days.get(muscle) ?? 0),
  ]);
  return textTable(columns, rows, width);
}

const sets = (value: number): string => String(Math.round(value * 100) / 100);

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
    const about =
      change === null
        ? 'trend'
        : `trend; ${massText(Math.abs(change) as typeof change, unit, 1)} ${change < 0 ? 'gained' : 'lost'}`;
    figures.push({ name: 'Body weight', value: massText(now, unit, 1), about });
  }
  if (review.waist) figures.push(waistFigure(review.waist, tapeOf(unit)));
  if (evidence.rate) figures.push(rateFigure(evidence.rate.now));
  if (evidence.plan) figures.push(...goalFigures(evidence.plan, unit));
  return [...figures, sessionsFigure(weeks)];
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
    const pauses = breaks === 0 ? '' : `, ${breaks} ${breaks === 1 ? 'pause' : 'pauses'} with it`;
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
    name: rate.percentAWeek < 0 ? 'Rate of gain' : name,
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
