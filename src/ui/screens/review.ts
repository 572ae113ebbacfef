import { reviewSections } from '../../report/review-text.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { safeText } from '../../text/safe-text.ts';
import type { ProgramEdit } from '../../workbench/change-program.ts';
import type { Advice, ReviewPage } from '../../workbench/look-back.ts';
import { BLANK, indented, type Line, line, paragraph, span } from '../line.ts';
import type { Role } from '../theme.ts';

/** Asked before the first review; only the answer is kept. */
export const weightQuestionLines = (columns: number): Line[] => [
  line('Before the review', 'strong'),
  BLANK,
  ...paragraph(
    'Are you under 18, or pregnant, or do you live with, or have you had, an eating disorder?',
    columns,
    'strong',
  ),
  BLANK,
  ...paragraph(
    'With a yes nothing is said here about how fast to lose weight, and training goes on as it is. Only the yes or no is kept, not what it is about.',
    columns,
  ),
  BLANK,
  ...paragraph('y: yes   n: none of it   esc: not now', columns),
];

/** The weekly review: the verdict first, then what it rests on. */
export function reviewLines(
  { review, unit, advice }: ReviewPage,
  chosen: number,
  columns: number,
): Line[] {
  const program = safeText(review.evidence.program.name);
  const sections = reviewSections(review, unit, { width: columns, glyphs: 'braille' });
  return [
    [span(`${program} · `), span(shortDayWords(review.today.toString()), 'strong')],
    ...advice.flatMap((each, index) => [BLANK, ...adviceLines(each, index, chosen, columns)]),
    ...sections.flatMap(({ title, lines }) => [
      BLANK,
      ...(title === null ? [] : [line(title, 'strong')]),
      ...lines.map((text) => line(text)),
    ]),
  ];
}

function adviceLines(
  { text, source, mayTake, mayRefuse }: Advice,
  index: number,
  chosen: number,
  columns: number,
): Line[] {
  const answers = mayTake || mayRefuse;
  const mark = answers ? (index === chosen ? '▸ ' : '  ') : index === 0 ? '' : '- ';
  const [first = BLANK, ...more] = paragraph(
    safeText(text),
    columns - mark.length,
    index === 0 ? 'strong' : 'plain',
  );
  return [
    [span(mark, 'drawn'), ...first],
    ...more.map((one) => indented(one, mark.length)),
    ...(index === 0
      ? paragraph(`(${safeText(source)})`, columns - mark.length).map((one) =>
          indented(one, mark.length),
        )
      : []),
  ];
}

/** What an advice changes in the program file, before it is written. */
export function adviceChangeLines(
  { text }: Advice,
  { path, where, lines }: ProgramEdit,
  columns: number,
): Line[] {
  return [
    ...paragraph(safeText(text), columns, 'strong'),
    BLANK,
    ...where.flatMap((each) => paragraph(safeText(each), columns)),
    ...paragraph(`In ${safeText(path)}:`, columns),
    BLANK,
    ...lines.map((each) => line(`${MARKS[each.kind]} ${safeText(each.text)}`, ROLES[each.kind])),
    BLANK,
    ...paragraph('Nothing is written yet: space writes it, esc leaves it as it is.', columns),
  ];
}

const MARKS = { gone: '-', new: '+', same: ' ', 'left-out': '…' } as const;
const ROLES: Readonly<Record<keyof typeof MARKS, Role>> = {
  gone: 'drawn',
  new: 'strong',
  same: 'plain',
  'left-out': 'plain',
};
