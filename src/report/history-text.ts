import { min, pairs } from 'd3-array';
import type { StrengthOn } from '../progression/lift-strength.ts';
import { isFromTable } from '../progression/own-table.ts';
import type { Result } from '../progression/past.ts';
import { countsWords } from '../progression/set-words.ts';
import { cutTo, wrapped } from '../text/columns.ts';
import { safeText } from '../text/safe-text.ts';
import { dayNumber } from '../training/day-number.ts';
import { loadWords } from '../training/load-words.ts';
import { inUnit, type Mass, massText, type Unit } from '../training/mass.ts';
import { dateTicks } from './date-ticks.ts';
import type { LiftSession } from './lift-rows.ts';
import { drawPlot, type PlotBand, type PlotSize, type Point } from './plot.ts';
import type { TextSize } from './review-text.ts';
import { type Column, textTable } from './table.ts';

/** Sessions further apart than this are not joined in a plot: something else was going on. */
export const DAYS_JOINED = 28;

const PLOT_ROWS = 14;

/**
 * Results over time in lines of at most `width` columns, the newest last; of a single lift with a plot
 * of its e1RM above. `rows` and `strength`, of that lift, are in order of date.
 */
export function historyText(
  rows: readonly LiftSession[],
  strength: readonly StrengthOn[],
  unit: Unit,
  { width, glyphs }: TextSize,
): string[] {
  const lifts = new Set(rows.map(({ result }) => result.exercise.lift));
  const size = { width, height: PLOT_ROWS, glyphs };
  const plot = lifts.size === 1 ? e1rmPlot(rows, strength, unit, size) : [];
  const columns: readonly Column[] = [
    { heading: 'date', align: 'left' },
    ...(lifts.size === 1 ? [] : [{ heading: 'lift', align: 'left' } as const]),
    { heading: 'load', align: 'right' },
    { heading: 'done', align: 'left' },
    { heading: 'in reserve', align: 'left', dropFirst: 3 },
    { heading: 'best e1RM', align: 'right', dropFirst: 1 },
    { heading: 'move', align: 'left', dropFirst: 2 },
    { heading: '', align: 'left', dropFirst: 4 },
  ];
  const cells = rows.map(({ result, best }) => [
    result.date.toString(),
    ...(lifts.size === 1 ? [] : [safeText(result.exercise.name)]),
    loadsText(result, unit),
    countsText(result),
    result.sets.map(({ reserve }) => reserve ?? '–').join(' '),
    best === null ? '' : massText(Math.round(best) as Mass, unit, 1),
    // Nobody moved a load in a table.
    isFromTable(result.exercise) ? '–' : result.exercise.move,
    marksText(result),
  ]);
  const title = lifts.size === 1 ? safeText(rows[0]?.result.exercise.name ?? '') : '';
  return [
    ...(plot.length > 0
      ? [`${title}: e1RM, ${unit}`, ...plot, ...wrapped(plotSays(strength), width), '']
      : []),
    ...textTable(columns, cells, width),
  ].map((line) => cutTo(line, width));
}

/** Stands under the plot of a lift. */
export const plotSays = (strength: readonly StrengthOn[]): string =>
  strength.length === 0
    ? 'dots: sessions'
    : 'dots: sessions; line: what they say together; shaded: 90 % sure';

/**
 * The e1RM of one lift over time as a plot in text: each session's best, and what they say together
 * with its error. None with fewer than two sessions that tell.
 */
export function e1rmPlot(
  rows: readonly LiftSession[],
  strength: readonly StrengthOn[],
  unit: Unit,
  size: PlotSize,
): string[] {
  const points = e1rmPoints(rows, unit);
  if (points.length < 2) return [];
  const { line, gap, bands } = strengthPlot(strength, rows, unit);
  return drawPlot(
    {
      lines: [
        { points, as: 'dots' },
        { points: line, as: 'line', gap },
      ],
      bands,
      yHolds: around(points),
      xTicks: dateTicks,
    },
    size,
  );
}

/** The estimate of a lift over the days of these sessions, in `unit`: its line and bands, open where it was not trained. */
export function strengthPlot(
  strength: readonly StrengthOn[],
  rows: readonly LiftSession[],
  unit: Unit,
): { readonly line: readonly Point[]; readonly gap: number; readonly bands: readonly PlotBand[] } {
  const from = rows[0] ? dayNumber(rows[0].result.date) : 0;
  const value = (micro: number) => inUnit(Math.round(micro) as Mass, unit);
  const shown = strength
    .filter(({ date }) => dayNumber(date) >= from)
    .map(({ date, low, middle, high }) => ({
      day: dayNumber(date),
      low: value(low),
      middle: value(middle),
      high: value(high),
    }));
  // It is asked at even steps, and where nothing was known a time is missing.
  const gap = min(pairs(shown), ([a, b]) => b.day - a.day) ?? 0;
  const parts: (typeof shown)[] = [];
  for (const on of shown) {
    const last = parts.at(-1)?.at(-1);
    if (last && on.day - last.day <= gap) parts.at(-1)?.push(on);
    else parts.push([on]);
  }
  return {
    line: shown.map(({ day, middle }) => [day, middle]),
    gap,
    bands: parts.map((part) => ({ edges: part.map(({ day, low, high }) => [day, low, high]) })),
  };
}

/** Three percent to both sides of the first value, so that a session's noise does not fill the plot. */
const around = ([first]: readonly Point[]): number[] =>
  first ? [first[1] * 0.97, first[1] * 1.03] : [];

/** e1RM over days, in `unit`. */
export const e1rmPoints = (rows: readonly LiftSession[], unit: Unit): Point[] =>
  rows.flatMap(({ result, best }) =>
    best === null
      ? []
      : [[dayNumber(result.date), inUnit(Math.round(best) as Mass, unit)] as const],
  );

/** The load, or the first and the last where it changed. */
export function loadsText({ exercise, sets }: Result, unit: Unit): string {
  const loads = [...new Set(sets.map(({ load }) => load))];
  return loads.map((load) => loadWords(load, exercise.basis, unit)).join(', ');
}

/** `6 5 5`, `45 s 40 s`, and of a cluster `14, then 5 4`. */
export function countsText({ exercise, sets }: Result): string {
  const counts = sets.map(({ count }) =>
    exercise.counts === 'seconds' ? `${count} s` : `${count}`,
  );
  return countsWords(counts, exercise.style, ' ');
}

function marksText({ pain, lighter, finished }: Result): string {
  return [pain && 'pain', lighter && 'lighter week', !finished && 'unfinished']
    .filter(Boolean)
    .join(', ');
}
