import { CAUTIONS, READINESS_QUESTIONS } from '../../training/cautions.ts';
import type { Bench } from '../../workbench/bench.ts';
import { BLANK, indented, type Line, line, paragraph, span } from '../line.ts';
import { detailTexts, planText } from '../plan-words.ts';
import type { Screen } from '../ui-state.ts';

/** Once, before the first session. */
export const cautionLines = (columns: number): Line[] => [
  line('Before the first session', 'strong'),
  ...CAUTIONS.flatMap((text) => [BLANK, ...paragraph(text, columns)]),
  BLANK,
  ...READINESS_QUESTIONS.flatMap((text, index) =>
    paragraph(`${index + 1}  ${text}`, columns, 'plain', 3),
  ),
  BLANK,
  ...paragraph('Is any of these a yes? y or n', columns, 'strong'),
];

/** Why each number is what it is: sentence, numbers used, source. */
export function whyLines(
  { exercises, unit, cut }: Extract<Screen, { kind: 'why' }>,
  bench: Bench,
  columns: number,
): Line[] {
  const asked = exercises.flatMap((exercise) => [
    line(exercise.name, 'strong'),
    ...paragraph(planText(exercise, unit), columns),
    ...detailTexts(exercise, unit, bench).flatMap((text) => paragraph(text, columns, 'plain', 2)),
    ...exercise.why.flatMap((reason) => {
      const { text, facts, source } = bench.reasonWords(reason);
      return [
        BLANK,
        ...paragraph(text, columns, 'strong'),
        ...facts.flatMap(({ name, value }) =>
          paragraph(`${name}: ${value}`, columns - 2, 'plain', 2).map((one) => indented(one, 2)),
        ),
        ...paragraph(source, columns - 2).map((one) => indented(one, 2)),
      ];
    }),
    ...[exercise.form, exercise.caution].flatMap((text) =>
      text ? [BLANK, ...paragraph(text, columns)] : [],
    ),
  ]);
  if (cut.length === 0) return asked;
  const words = cut.flatMap((reason) =>
    paragraph(bench.reasonWords(reason).text, columns, 'plain', 2),
  );
  return [...asked, BLANK, line('Cut for want of time', 'strong'), ...words];
}

/** Heading of a page, and a line under it. */
export const titled = (title: string, words: string | null, columns: number): Line[] => [
  [span(title, 'strong')],
  ...(words ? [BLANK, ...paragraph(words, columns)] : []),
  BLANK,
];
