import type { Sheet } from '../../lifter/change-program.ts';
import { doneShortText, doneText } from '../../program/done-text.ts';
import type { Exercise } from '../../program/program.ts';
import { safeText } from '../../text/safe-text.ts';
import { howMany, keyWords } from '../../text/words.ts';
import { BLANK, type Line, line, paragraph, span, spread, widthOf } from '../line.ts';
import type { SheetScreen } from '../ui-state.ts';
import { scrollTo, windowOf } from '../window.ts';

/** From this width on the figures stand beside the days. */
const BESIDE = 76;
const FIGURES = 24;

/** The program day by day, with what it comes to. */
export function sheetLines({ sheet, chosen }: SheetScreen, columns: number, rows: number): Line[] {
  const isWide = columns >= BESIDE;
  const left = isWide ? columns - FIGURES - 2 : columns;
  const head = headLines(sheet, columns);
  const figures = isWide ? figureLines(sheet) : shortFigures(sheet, columns);
  const room = rows - head.length - (isWide ? 0 : figures.length);
  const list = dayLines(sheet, chosen, left);
  const days = windowOf(list.lines, room, scrollTo(list.at, list.at + 1, room));
  if (!isWide) return [...head, ...days, ...figures];
  return [...head, ...days.map((one, at) => beside(one, figures[at] ?? BLANK, left))];
}

function headLines(sheet: Sheet, columns: number): Line[] {
  const open = sheet.findings.filter(({ accepted }) => accepted === null).length;
  const found = howMany(open, 'finding');
  const state = sheet.text === sheet.before ? found : `${found} · not saved`;
  return [spread([span(safeText(sheet.program.name), 'strong')], [span(state)], columns), BLANK];
}

function dayLines({ figures }: Sheet, chosen: number, columns: number) {
  const lines: Line[] = [];
  let at = 0;
  let row = 0;
  const push = (one: (mark: string) => Line) => {
    if (row === chosen) at = lines.length;
    lines.push(one(row === chosen ? '▸ ' : '  '));
    row += 1;
  };
  for (const { name, exercises, minutes } of figures.days) {
    if (lines.length > 0) lines.push(BLANK);
    push((mark) =>
      spread(
        [span(mark, 'drawn'), span(safeText(name), 'strong')],
        [span(`${minutes} min`)],
        columns,
      ),
    );
    for (const exercise of exercises) {
      push((mark) => doneLine(exercise, columns, `${mark}  `));
    }
  }
  return { lines, at };
}

/** A lift and how it is done, as far as there is room for that. */
export function doneLine(exercise: Exercise, columns: number, mark = ''): Line {
  const name: Line = [span(mark, 'drawn'), span(safeText(exercise.lift.name))];
  const whole = spread(name, [span(doneText(exercise))], columns);
  return whole === name ? spread(name, [span(doneShortText(exercise))], columns) : whole;
}

/** Hard sets a muscle; those outside the band are marked by a word. */
function figureLines({ figures, band: [low, high] }: Sheet): Line[] {
  return [
    line(`hard sets, of ${low}–${high}`),
    ...figures.muscles.map(({ muscle, hardSets, directDays }) => {
      const isOff = hardSets > high || (directDays > 0 && hardSets < low);
      const word = hardSets > high ? 'over' : isOff ? 'few' : hardSets === 0 ? 'none' : '';
      return line(
        `${keyWords(muscle).padEnd(12)}${String(hardSets).padStart(5)} ${word}`.trimEnd(),
        isOff ? 'strong' : 'plain',
      );
    }),
  ];
}

function shortFigures({ figures, band: [low, high] }: Sheet, columns: number): Line[] {
  const off = figures.muscles
    .filter(
      ({ hardSets, directDays }) =>
        hardSets > high || hardSets === 0 || (directDays > 0 && hardSets < low),
    )
    .map(({ muscle, hardSets }) => `${keyWords(muscle)} ${hardSets}`);
  const text =
    off.length === 0
      ? `Every muscle within ${low}–${high} sets.`
      : `Outside ${low}–${high} sets: ${off.join(', ')}.`;
  return paragraph(text, columns).slice(0, 2);
}

function beside(left: Line, right: Line, columns: number): Line {
  if (right.length === 0) return left;
  return [...left, span(' '.repeat(Math.max(0, columns - widthOf(left)) + 2)), ...right];
}

/** Rows of a sheet in order: a day, then its exercises (null for the day's own row). */
export const sheetRows = ({ program }: Sheet) =>
  program.days.flatMap(({ exercises }, day) => [
    { day, exercise: null },
    ...exercises.map((_, exercise) => ({ day, exercise })),
  ]);
