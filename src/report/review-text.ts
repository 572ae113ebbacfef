import { CUT_LIMITS } from '../cut/cut-limits.ts';
import type { ReviewFinding } from '../cut/finding.ts';
import type { LiftKept } from '../cut/kept.ts';
import type { Review } from '../cut/review.ts';
import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { columnsOf, cutTo, wrapped } from '../text/columns.ts';
import { dayAndMonth, dayWords } from '../text/day-words.ts';
import { safeText } from '../text/safe-text.ts';
import { keyWords } from '../text/words.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import type { ReasonWords } from '../training/rule.ts';
import { barRows } from './bar-rows.ts';
import { closingLines } from './closing-lines.ts';
import type { Glyphs } from './plot.ts';
import { keptWords, reviewFigures } from './review-figures.ts';
import { type Column, SPOKEN_WIDTH, textTable } from './table.ts';

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
  const figures = reviewFigures(review, unit);
  const widest = (of: 'name' | 'value') => Math.max(...figures.map((each) => columnsOf(each[of])));
  // Side by side where every value has room beside every name; else one below the other.
  if (widest('name') + 2 + widest('value') > width) {
    return figures.flatMap(({ name, value, about }) => [
      ...wrapped(`${name}: ${value}`, width, '  '),
      ...wrapped(about, width - 2).map((text) => `  ${text}`),
    ]);
  }
  const columns: readonly Column[] = [
    { heading: 'figure', align: 'left' },
    { heading: '', align: 'right' },
    { heading: '', align: 'left' },
  ];
  if (width >= SPOKEN_WIDTH) {
    const rows = figures.map(({ name, value, about }) => [name, value, about]);
    return textTable(columns, rows, width).slice(1);
  }
  // What has no room behind its value stands below it: it belongs to the number.
  const table = textTable(
    columns.slice(0, 2),
    figures.map(({ name, value }) => [name, value]),
    width,
  ).slice(1);
  return figures.flatMap(({ about }, at) => {
    const line = table[at] ?? '';
    const whole = `${line}  ${about}`;
    const fits = columnsOf(whole) <= width;
    return fits ? [whole] : [line, ...wrapped(about, width - 2).map((text) => `  ${text}`)];
  });
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
    return { label: keyWords(muscle), value, text: sets(value) };
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
    keyWords(muscle),
    ...weeks.map(({ hardSets }) => sets(hardSets.get(muscle) ?? 0)),
    String(last?.days.get(muscle) ?? 0),
  ]);
  return textTable(columns, rows, width);
}

const sets = (value: number): string => String(Math.round(value * 100) / 100);
