import { e1rmPlot } from '../../report/history-text.ts';
import { shortDayWords } from '../../text/day-words.ts';
import type { Bench } from '../../workbench/bench.ts';
import { choicesOf } from '../choices-of.ts';
import { correctionOf } from '../correction.ts';
import { BLANK, type Line, line, paragraph } from '../line.ts';
import { fieldLine } from '../runner/entry-lines.ts';
import type { Model, ResultsScreen, Screen } from '../ui-state.ts';

import { listLines } from './lists.ts';
import { titled } from './pages.ts';

/** Rows that a plot takes, and how many must be left for the sessions. */
const PLOT_ROWS = { tall: 14, usual: 9 } as const;
const LEAST_LIST_ROWS = 9;

/** The sessions of a lift, with a plot of its estimate where there is room for one. */
export function resultsLines(
  model: Model,
  screen: ResultsScreen,
  bench: Bench,
  columns: number,
  rows: number,
): Line[] {
  const list = choicesOf(model, bench);
  if (!list) return [];
  const height = rows >= 34 ? PLOT_ROWS.tall : PLOT_ROWS.usual;
  const roomy = rows - height - 1 >= LEAST_LIST_ROWS && columns >= 50;
  const [newest] = screen.results;
  const plotted = roomy && newest ? screen.results.map(({ row }) => row).toReversed() : [];
  const plot = e1rmPlot(plotted, newest?.unit ?? 'kg', {
    width: columns,
    height,
    glyphs: 'braille',
  });
  if (plot.length === 0) return listLines(list, screen.chosen, columns, rows);
  const above = [
    line(`${list.title}: e1RM, ${newest?.unit}`, 'strong'),
    ...plot.map((row) => line(row, 'drawn')),
    BLANK,
  ];
  const below = listLines({ ...list, title: '' }, screen.chosen, columns, rows - above.length + 2);
  return [...above, ...below.slice(2)];
}

/** The numbers of an old set, to be typed over. */
export function correctLines(
  screen: Extract<Screen, { kind: 'correct' }>,
  columns: number,
): Line[] {
  const { past } = screen.back;
  const { exercise, date } = past.row.result;
  const { target, draft } = correctionOf(screen);
  const index = past.row.result.sets.findIndex(({ id }) => id === screen.set.id);
  return [
    ...titled(`${exercise.name}, set ${index + 1}`, shortDayWords(date.toString()), columns),
    fieldLine(target, draft, past.unit, columns),
    BLANK,
    ...paragraph(
      'The set stays as it was written; the correction is kept beside it, and what comes next follows from it.',
      columns,
    ),
  ];
}

/** What is searched for. */
export const searchLines = (typed: string, columns: number): Line[] => [
  ...titled('Search', 'Words of a lift, a program, a day, a note, or a date: 2026-11.', columns),
  line(`> ${typed}_`, 'strong'),
];
