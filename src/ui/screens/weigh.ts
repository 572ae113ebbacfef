import { shortDayWords } from '../../text/day-words.ts';
import { readQuantity } from '../../training/mass.ts';
import { blockDigits } from '../digits.ts';
import { BLANK, type Line, line, paragraph, span } from '../line.ts';
import type { Model, Screen } from '../ui-state.ts';

/** Asks for today's body weight. */
export function weighLines(
  { size }: Pick<Model, 'size'>,
  { weighing, typed }: Extract<Screen, { kind: 'weigh' }>,
  columns: number,
): Line[] {
  const { date, unit, words } = weighing;
  const digits = blockDigits(typed, columns, size.rows >= 24 ? 7 : 5) ?? [typed];
  // A unit that is typed beats the program's.
  const shown = readQuantity(typed, unit)?.unit ?? unit;
  return [
    [span('Weigh in', 'strong'), span(` · ${shortDayWords(date.toString())}`)],
    BLANK,
    ...digits.map((row) => line(row)),
    ...(typed === '' ? [line('_', 'strong')] : []),
    line(shown, 'strong'),
    BLANK,
    ...words.flatMap((text) => paragraph(text, columns)),
  ];
}
